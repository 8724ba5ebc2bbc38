import type { NumberVoice } from '../voice.ts'
import { numberFormat } from './say-number.ts'

// More than any jug, scale or meter of a room shows, and few enough that a converted unit shows no stray digits.
const typedDigits = 6

/** A number as somebody of the locale would type it into a box: its own decimal mark, no mark between thousands. */
export const typeNumber = (value: number, { locale }: NumberVoice): string =>
  numberFormat(locale, { useGrouping: false, maximumSignificantDigits: typedDigits }).format(value)
