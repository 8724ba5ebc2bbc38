import type { Phrase, Quantity, Unit } from '@fryward/shared'
import { sayDate } from '../dates/say-date.ts'
import { sayPlainTime } from '../dates/say-time.ts'
import { quantityParts, sayQuantity } from '../quantities/say-quantity.ts'
import type { NumberVoice, UnitVoice } from '../voice.ts'

/** A sentence in order: words, and quantities that a screen may show in a size of their own. */
export type Piece = string | SaidPlace
/** `isBare`: the words behind it say what it counts ("160,000 rotifers"). */
export type SaidPlace = { name: string; quantity: Quantity; isBare: boolean }

/** Heads and times bring their own noun ("160,000 rotifers", "3 samples"). */
const nounless: ReadonlySet<Unit> = new Set(['animals', 'eggs', 'times'])

export const placeFor = (name: string, quantity: Quantity): SaidPlace => ({
  name,
  quantity,
  isBare: nounless.has(quantity.unit),
})

const placePattern = /\{([a-zA-Z0-9_]+)\}/

/** Words and places of a template in turn: odd entries are names. */
export const cutAtPlaces = (template: string): string[] => template.split(placePattern)

/** A sentence of the engine with its `{name}` places filled. */
export const phrasePieces = (phrase: Phrase, voice: NumberVoice): Piece[] =>
  cutAtPlaces(phrase.text).flatMap((part, index): Piece[] => {
    if (index % 2 === 0) return part === '' ? [] : [sayDatesIn(part, voice)]
    const quantity = phrase.quantities[part]
    return [quantity ? placeFor(part, quantity) : `{${part}}`]
  })

export const sayPieces = (pieces: readonly Piece[], voice: UnitVoice): string =>
  pieces.map((piece) => (typeof piece === 'string' ? piece : sayPlace(piece, voice))).join('')

const sayPlace = ({ quantity, isBare }: SaidPlace, voice: UnitVoice): string =>
  isBare ? quantityParts(quantity, voice).number : sayQuantity(quantity, voice)

/** The sentence as plain text, for labels, messages and mail. */
export const sayPhrase = (phrase: Phrase, voice: UnitVoice): string => sayPieces(phrasePieces(phrase, voice), voice)

/** The engine writes a date inside a sentence as 2026-11-26 and a time as 19:00; people read Thu 26 Nov and 7:00 pm. */
export const sayDatesIn = (text: string, voice: NumberVoice): string =>
  text
    .replaceAll(/\b\d{4}-\d{2}-\d{2}\b/g, (date) => sayDate(date, voice))
    .replaceAll(/\b(?:[01]\d|2[0-3]):[0-5]\d\b/g, (time) => sayPlainTime(time, voice))
