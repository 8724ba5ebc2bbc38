import type { Locale } from '@fryward/shared'
import type { NumberVoice } from '../voice.ts'

const large = [
  { size: 1e12, word: 'trillion', letter: 'T' },
  { size: 1e9, word: 'billion', letter: 'B' },
  { size: 1e6, word: 'million', letter: 'M' },
] as const

/** The words that stand for zeros behind a number. */
export const scaleWords = Object.fromEntries(large.map(({ size, word }) => [word, size]))

const formats = new Map<string, Intl.NumberFormat>()
/** Making a format costs far more than using it. */
export function numberFormat(locale: Locale, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${locale} ${JSON.stringify(options)}`
  const known = formats.get(key) ?? new Intl.NumberFormat(locale, options)
  formats.set(key, known)
  return known
}

/** Digits a syringe, jug or scale can show: three that mean something, none after the point from a hundred up. */
export const sayNumber = (value: number, voice: NumberVoice): string => say(value, voice, 'word')

/** The same beside the axis of a chart, where "1.5 million" is too wide: "1.5 M". */
export const sayNarrow = (value: number, voice: NumberVoice): string => say(value, voice, 'letter')

function say(value: number, { locale }: NumberVoice, by: 'word' | 'letter'): string {
  if (!Number.isFinite(value)) return '–'
  const size = Math.abs(value)
  const digits = (of: number, maximumSignificantDigits: number) =>
    numberFormat(locale, { maximumSignificantDigits }).format(of)
  // From ten thousand on nobody counted one by one: an estimate shows no more than three digits.
  if (size >= 10_000) {
    const shown = Number(value.toPrecision(3))
    const step = large.find((one) => Math.abs(shown) >= one.size)
    return step ? `${digits(shown / step.size, 3)} ${step[by]}` : digits(shown, 3)
  }
  if (size >= 100) return numberFormat(locale, { maximumFractionDigits: 0 }).format(Math.round(value))
  return digits(value, size < 1 ? 2 : 3)
}

/** Heads that somebody counted one by one: every digit. */
export const sayWhole = (value: number, { locale }: NumberVoice): string =>
  numberFormat(locale, { maximumFractionDigits: 0 }).format(value)

/** A share in whole hundredths: "62%". */
export const sayPercent = (share: number, voice: NumberVoice): string => `${sayWhole(Math.round(share * 100), voice)}%`
