import type { NumberVoice } from '../voice.ts'
import { marksOf } from './locale-marks.ts'
import { scaleWords } from './say-number.ts'

/** What a typed text is: one number, two that it may be, none yet, or no number at all. */
export type ReadNumber =
  | { is: 'number'; value: number }
  | { is: 'unclear'; readings: [thousands: number, decimal: number] }
  | { is: 'empty' }
  | { is: 'wrong' }

/** First digits of the scripts whose digits phones type: Arabic, Persian and Urdu, Devanagari, Thai, full width. */
const zeros = [0x0660, 0x06f0, 0x0966, 0x0e50, 0xff10]
const toLatinDigit = (digit: string): string => {
  const code = digit.codePointAt(0)!
  const zero = zeros.find((first) => code >= first && code < first + 10)
  return zero === undefined ? digit : String(code - zero)
}

/** One spelling for what looks the same: digits, signs, and the marks between digits. Marks of direction say nothing. */
const inOneSpelling = (text: string): string =>
  text
    .replaceAll(/[\u200e\u200f\u061c\u2066-\u2069]/g, '')
    .trim()
    .replaceAll(/\p{Nd}/gu, toLatinDigit)
    .replaceAll(/[\u2212\u2010\u2011\u2013\uff0d]/g, '-')
    .replaceAll(/[\u060c\uff0c]/g, ',')
    .replaceAll(/\uff0e/g, '.')
    .replaceAll(/[\u2019\u02bc\u2018]/g, "'")
    .replaceAll(/\s/g, ' ')

/** These never stand before the part behind the point, in no locale; the Arabic decimal mark stands nowhere else. */
const alwaysGroups = [' ', "'", '\u066c']
const arabicDecimal = '\u066b'

/** Thousands, or thousands and then hundreds of thousands as in India; no group before a zero. */
const groupShapes = [/^[1-9]\d{0,2}(_\d{3})+$/, /^[1-9]\d?(_\d{2})*_\d{3}$/]
const isGrouped = (whole: string, mark: string): boolean =>
  groupShapes.some((shape) => shape.test(whole.replaceAll(mark, '_')))

/**
 * Reads a number as people of the locale write it, and as others do where that can mean nothing else. A comma or a
 * point that may be either in this locale is told as both readings: never one of them in silence.
 */
export function readNumber(text: string, voice: NumberVoice): ReadNumber {
  const clean = inOneSpelling(text)
  if (clean === '') return { is: 'empty' }
  const [, sign = '', digits = '', scale = '', power = ''] =
    /^([-+]?)([\d.,' \u066b\u066c]+?)(?: ?(million|billion|trillion)|e([-+]?\d{1,3}))?$/i.exec(clean) ?? []
  const spelt = digits === '' ? [] : readingsOf(digits, voice)
  const factor = (scaleWords[scale.toLowerCase()] ?? 1) * (sign === '-' ? -1 : 1)
  // A power is written behind the digits, not multiplied: 0.1 * 10 ** 3 is not always 100.
  const values = spelt.map((plain) => toNumber(plain, power) * factor)
  const [first, second] = values
  if (first === undefined || !values.every(Number.isFinite)) return { is: 'wrong' }
  return second === undefined ? { is: 'number', value: first } : { is: 'unclear', readings: [first, second] }
}

const toNumber = (plain: string, power: string): number => Number(power === '' ? plain : `${plain}e${power}`)

/** What the digits may mean, as plain numbers with a point: none, one, or both readings of a lone comma or point. */
function readingsOf(text: string, voice: NumberVoice): string[] {
  if (/^\d+$/.test(text)) return [text]
  const marks = [...new Set(text.replaceAll(/\d/g, ''))]
  if (marks.length > 2) return []
  const [last = ''] = text.replaceAll(/\d/g, '').slice(-1)
  if (marks.length === 2) return readTwoMarks(text, marks.find((mark) => mark !== last)!, last)
  const count = text.split(last).length - 1
  if (alwaysGroups.includes(last) || count > 1) return isGrouped(text, last) ? [text.replaceAll(last, '')] : []
  return readLoneMark(text, last, voice)
}

/** "1,200.5" and "1.200,5": the mark that comes last, once, is the point. */
function readTwoMarks(text: string, group: string, decimal: string): string[] {
  const [whole = '', part = '', ...more] = text.split(decimal)
  const isPoint = !alwaysGroups.includes(decimal) && group !== arabicDecimal && more.length === 0
  if (!isPoint || !isGrouped(whole, group)) return []
  return [`${whole.replaceAll(group, '')}.${part}`]
}

function readLoneMark(text: string, mark: string, voice: NumberVoice): string[] {
  const [whole = '', part = ''] = text.split(mark)
  const asDecimal = `${whole || '0'}.${part || '0'}`
  const { decimal, group } = marksOf(voice.locale)
  if (whole === '' && part === '') return []
  if (mark === decimal || mark === arabicDecimal) return [asDecimal]
  const mayGroup = isGrouped(text, mark)
  // What the page itself shows for a thousand is a thousand.
  if (mayGroup && mark === group) return [`${whole}${part}`]
  if (mayGroup) return [`${whole}${part}`, asDecimal]
  // "2,5" where a comma groups: no thousand is written so. "1,2000" is a slip that nobody can read.
  const isDecimal = part !== '' && (mark !== group || part.length < 3 || whole === '' || whole.startsWith('0'))
  return isDecimal ? [asDecimal] : []
}
