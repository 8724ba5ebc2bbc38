'use client'

import type { Phrase, Quantity } from '@fryward/shared'
import { useUnitSystem } from '@/features/rooms/room-context.tsx'
import styles from './amount.module.css'
import { formatNumber } from './format-number.ts'
import { toShown } from './room-units.ts'

/** A number with its unit a size smaller, in the room's units. */
export function Amount({ quantity, isLarge = false }: { quantity: Quantity; isLarge?: boolean }) {
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
  const parts = phrase.text.split(/(\{[a-zA-Z0-9_]+\})/)
  return (
    <>
      {parts.map((part) => {
        const name = part.startsWith('{') ? part.slice(1, -1) : undefined
        const quantity = name === undefined ? undefined : phrase.quantities[name]
        return <span key={part}>{quantity ? <Amount quantity={quantity} isLarge={name === large} /> : part}</span>
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
export function toText(phrase: Phrase, system: 'metric' | 'us'): string {
  return phrase.text.replaceAll(/\{([a-zA-Z0-9_]+)\}/g, (whole, name: string) => {
    const quantity = phrase.quantities[name]
    return quantity ? toQuantityText(quantity, system) : whole
  })
}

export function toQuantityText(quantity: Quantity, system: 'metric' | 'us'): string {
  const shown = toShown(quantity, system)
  const unit = shown.label === '%' ? '%' : ` ${shown.label}`
  return `${formatNumber(shown.value)}${unit}`
}
