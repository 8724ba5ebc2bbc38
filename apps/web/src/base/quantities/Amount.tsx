'use client'

import type { Phrase, Quantity, UnitSystem } from '@fryward/shared'
import { sayDate } from '@/base/dates/say.ts'
import { useUnitSystem } from '@/base/room/room-context.tsx'
import styles from './amount.module.css'
import { formatNumber } from './format-number.ts'
import { toShown } from './room-units.ts'

type AmountProps = {
  quantity: Quantity
  isLarge?: boolean
}

/** A number with its unit a size smaller, in the room's units. */
export function Amount({ quantity, isLarge = false }: AmountProps) {
  const shown = toShown(quantity, useUnitSystem())
  return (
    <span className={isLarge ? styles.large : styles.plain}>
      {formatNumber(shown.value)}
      <span className={styles.unit}>
        {shown.label === '%' ? '' : ' '}
        {shown.label}
      </span>
    </span>
  )
}

/** A sentence of the engine with its `{name}` places filled in the room's units. */
export function PhraseText({ phrase }: { phrase: Phrase }) {
  const system = useUnitSystem()
  return <>{toText(phrase, system)}</>
}

/** The same sentence with one of its numbers large: the one to measure out. */
export function PhraseWithAmount({ phrase, large }: { phrase: Phrase; large: string }) {
  const system = useUnitSystem()
  return (
    <>
      {phrase.text.split(placePattern).map((part, i, parts) => {
        const quantity = quantityAt(phrase, part)
        if (!quantity) return <span key={part}>{sayDates(part)}</span>
        if (part === `{${large}}`) return <Amount key={part} quantity={quantity} isLarge />
        return isUnitSaid(quantity, toShown(quantity, system).label, parts[i + 1]) ? (
          <span key={part}>{formatNumber(toShown(quantity, system).value)}</span>
        ) : (
          <Amount key={part} quantity={quantity} />
        )
      })}
    </>
  )
}

/** The place of a sentence that holds this very amount; undefined when the sentence does not say it. */
export const placeOf = (phrase: Phrase, amount: Quantity | null): string | undefined =>
  amount === null
    ? undefined
    : Object.entries(phrase.quantities).find(
        ([name, quantity]) =>
          quantity.value === amount.value && quantity.unit === amount.unit && phrase.text.includes(`{${name}}`),
      )?.[0]

/** The same sentence as plain text, for labels and messages. */
export function toText(phrase: Phrase, system: UnitSystem): string {
  return phrase.text
    .split(placePattern)
    .map((part, i, parts) => {
      const quantity = quantityAt(phrase, part)
      if (!quantity) return sayDates(part)
      const shown = toShown(quantity, system)
      const word = isUnitSaid(quantity, shown.label, parts[i + 1]) ? '' : unitWord(shown.label)
      return `${formatNumber(shown.value)}${word}`
    })
    .join('')
}

export function toQuantityText(quantity: Quantity, system: UnitSystem): string {
  const shown = toShown(quantity, system)
  return `${formatNumber(shown.value)}${unitWord(shown.label)}`
}

/** The engine writes dates as 2026-11-26; people read Thu 26 Nov. */
export const sayDates = (text: string) => text.replaceAll(/\b\d{4}-\d{2}-\d{2}\b/g, (date) => sayDate(date))

const placePattern = /(\{[a-zA-Z0-9_]+\})/

const quantityAt = (phrase: Phrase, part: string): Quantity | undefined =>
  part.startsWith('{') ? phrase.quantities[part.slice(1, -1)] : undefined

const unitWord = (label: string) => (label === '%' ? '%' : ` ${label}`)

/** Heads and times bring their own noun ("160,000 rotifers", "3 samples"). */
const nounless: ReadonlySet<string> = new Set(['animals', 'eggs', 'times'])

/** Some sentences say the unit themselves. */
const isUnitSaid = (quantity: Quantity, label: string, rest = ''): boolean =>
  nounless.has(quantity.unit) || rest.trimStart().startsWith(label)
