import type { TaskTitle, Title, TitleDestination, TitleDetail } from '@fryward/shared'
import { sayDate } from '../dates/say-date.ts'
import { sayPlainTime } from '../dates/say-time.ts'
import { sayLikelihood } from '../phrases/likelihood.ts'
import { cutAtPlaces, type Piece, phrasePieces, placeFor, sayPieces } from '../phrases/pieces.ts'
import type { UnitVoice } from '../voice.ts'
import { patterns } from './patterns.ts'

/** The title as it stands under its vessel's name. */
export const sayTitle = (title: TaskTitle, voice: UnitVoice): string => sayPieces(titlePieces(title, voice), voice)

/** The title where nothing else names the vessel: "R2: 2.6 mL concentrate, second feed". */
export const sayWholeTitle = (title: TaskTitle, subject: { name: string }, voice: UnitVoice): string =>
  `${subject.name}: ${sayTitle(title, voice)}`

/** The same in pieces, so that a screen can show the number large. The amount's piece is named `amount`. */
export function titlePieces(title: TaskTitle, voice: UnitVoice): Piece[] {
  if ('text' in title) return phrasePieces(title, voice)
  const to = title.to.map(sayDestination)
  const words: Record<string, Piece[]> = {
    amount: title.amount ? [placeFor('amount', title.amount)] : [],
    thing: [title.thing ?? ''],
    from: [title.from ?? ''],
    to: [to.join(', ')],
  }
  const pattern = cutAtPlaces(patterns[title.deed])
  const deed = pattern.flatMap((part, index) => (index % 2 === 0 ? [part] : (words[part] ?? [])))
  const isToSaid = pattern.includes('to')
  const toBehind = isToSaid || to.length === 0 ? [] : [`: ${to.join(', ')}`]
  const details = title.details.flatMap((detail) => detailPieces(detail, voice, toBehind.length > 0))
  return [...deed, ...toBehind, ...details].filter((piece) => piece !== '')
}

const ways = { other_fish: 'other fish', chilled_reserve: 'chilled reserve', drain: 'the drain' } as const
const sayDestination = (to: TitleDestination): string => ('name' in to ? to.name : ways[to.way])

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth']

/** Behind a list of destinations a comma would read as one more of them. */
function detailPieces(detail: TitleDetail, voice: UnitVoice, isBehindList: boolean): Piece[] {
  const comma = isBehindList ? '; ' : ', '
  switch (detail.kind) {
    case 'feed':
      return [`${comma}${ordinals[detail.number - 1] ?? `${detail.number}th`} feed`]
    case 'day':
      return [`${comma}day ${detail.day}`]
    case 'age':
      return [`${comma}${detail.days === 1 ? '1 day' : `${detail.days} days`} old`]
    case 'amount':
      return [comma, placeFor('detail', detail.quantity), ` ${detail.of}`]
    case 'for_feeds_of':
      return [`${comma}for the feeds of ${sayDate(detail.date, voice)}`]
    case 'use_by':
      return [`: this one is to be used by ${sayDate(detail.date, voice)}`]
    case 'to_come_on':
      return [`${comma}to come on ${sayDate(detail.date, voice)}`]
    case 'tonight':
      return [`: tonight ${sayLikelihood(detail.probability, voice)}`]
    case 'hours':
      return [`: ${sayPlainTime(detail.from, voice)} to ${sayPlainTime(detail.to, voice)}`]
    case 'because':
      return [`: ${detail.words.join(', ')}`]
    case 'with':
      return [`${comma}${detail.words}`]
  }
}

/** The name of the piece that holds this very amount; undefined when the title does not say it. */
export function amountPlace(title: TaskTitle, amount: { value: number; unit: string } | null): string | undefined {
  if (amount === null) return undefined
  if (!('text' in title)) return isSaid(title) ? 'amount' : undefined
  return Object.entries(title.quantities).find(
    ([name, one]) => one.value === amount.value && one.unit === amount.unit && cutAtPlaces(title.text).includes(name),
  )?.[0]
}

const isSaid = (title: Title) => title.amount !== null && cutAtPlaces(patterns[title.deed]).includes('amount')
