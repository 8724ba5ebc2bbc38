import type { FoodOutlook, Instant, PlainDate } from '@fryward/shared'
import { daysBetween } from '../dates/day-arithmetic.ts'
import { sayTime } from '../dates/say-time.ts'
import { sayLikelihood } from '../phrases/likelihood.ts'
import { together } from '../phrases/together.ts'
import { sayQuantity } from '../quantities/say-quantity.ts'
import type { Voice } from '../voice.ts'

type Culture = FoodOutlook['cultures'][number]

/** What the list says of moving the nest today: until when, that it is done, or nothing. */
export type NestPull = { dueAt: Instant; isDone: boolean } | null

/** A clutch that may hatch tonight, said in the afternoon; each line a sentence of its own. */
export type AfternoonCall = {
  clutchId: string
  /** How likely it hatches tonight, 0 to 1. */
  probability: number
  title: string
  pull: string
  /** What to have ready, how long the food lasts, and what to watch; none where nothing of it can be said. */
  food: string[]
  otherChoice: string
}

type Asked = { today: PlainDate; voice: Voice; pullOf: (clutchId: string) => NestPull }

/** The clutches that may hatch tonight by the plan, likeliest first. */
export function afternoonCalls(outlook: FoodOutlook, asked: Asked): AfternoonCall[] {
  const { today, voice } = asked
  return outlook.eaters
    .flatMap((eater) => {
      const tonight = eater.kind === 'clutch' ? (eater.nights.find(({ date }) => date === today)?.probability ?? 0) : 0
      return tonight >= leastCalled ? [{ eater, tonight }] : []
    })
    .sort((a, b) => b.tonight - a.tonight)
    .map(({ eater, tonight }) => ({
      clutchId: eater.subjectId,
      probability: tonight,
      title: `${eater.name} may hatch tonight: ${sayLikelihood(tonight, voice)}`,
      pull: sayPull(asked.pullOf(eater.subjectId), voice),
      food: foodOf(outlook, { eaterId: eater.id, tonight, ...asked }),
      otherChoice: `The other choice is to leave ${eater.name} with its parents.`,
    }))
}

// A night less likely than one in twenty needs nobody to be called. common practice
const leastCalled = 0.05

function sayPull(pull: NestPull, voice: Voice): string {
  if (!pull) return 'Wait with the nest: a day with the male costs nothing.'
  return pull.isDone ? 'The nest is pulled.' : `Pull the nest by ${sayTime(pull.dueAt, voice)}, before dark.`
}

type OneClutch = Asked & { eaterId: string; tonight: number }

function foodOf(outlook: FoodOutlook, one: OneClutch): string[] {
  const tomorrow = outlook.days[1]
  const gives = tomorrow?.gives.filter(({ eaterId }) => eaterId === one.eaterId) ?? []
  const feeders = gives.flatMap(({ cultureId }) => outlook.cultures.filter(({ id }) => id === cultureId))
  const [feeder] = feeders
  if (!feeder)
    return ['No culture can feed them tomorrow: leave this clutch with its parents, or buy in rotifers today.']
  // The plan counts on as many as are likely to have hatched; tonight's all eat tomorrow.
  const litres = gives.map(({ volumeL, cultureId }) => ({ volumeL: volumeL / one.tonight, cultureId }))
  const amounts = litres.map(
    ({ volumeL, cultureId }) =>
      `${sayQuantity({ value: volumeL, unit: 'L' }, one.voice)} of ${feeders.find(({ id }) => id === cultureId)?.name}`,
  )
  return [`Have ${together(amounts)} ready for their first day.`, sayHowLong(outlook, one), sayWeakest(outlook, feeder)]
}

function sayHowLong({ worry }: FoodOutlook, { today, eaterId }: OneClutch): string {
  if (!worry) return 'The food lasts as far as can be seen.'
  // Day 0 is the morning after tonight.
  const lifeDay = daysBetween(today, worry.date) - 1
  const who = worry.eaterIds.includes(eaterId) ? '' : ' for others'
  if (lifeDay < 1) return `The food is short${who} from their first day on.`
  return `The food lasts to day ${lifeDay - 1} of their life; from day ${lifeDay} on it may fall short${who}.`
}

function sayWeakest({ cultures }: FoodOutlook, feeder: Culture): string {
  const sharing = feeder.sharesCausesWith.flatMap(({ cultureId, causes }) => {
    const other = cultures.find((culture) => culture.cultureId === cultureId)
    return other ? [`its ${together(causes.map((cause) => causeWords[cause]))} with ${other.name}`] : []
  })
  const shares = sharing.length > 0 ? `, which shares ${together(sharing)}` : ''
  return `The weakest point is ${feeder.name}${shares}. ${sayStandIn(cultures, feeder)}`
}

const causeWords = { air: 'air line', shelf: 'shelf', bottle: 'feed bottle', parent: 'parent', tools: 'tools' } as const

function sayStandIn(cultures: readonly Culture[], feeder: Culture): string {
  const others = cultures.filter(({ id, cultureId }) => id !== feeder.id && cultureId !== null)
  const standIn = others.find(({ standing }) => standing === 'gives')
  if (standIn) return `If it goes, feed from ${standIn.name}.`
  const backup = others.find(({ standing }) => standing === 'backup')
  return backup ? `If it goes, the backup ${backup.name} has to feed.` : 'If it goes, nothing stands in for it.'
}
