import type { CultureEstimate } from '@fryward/live-feed'
import type { Because, Id, Instant } from '@fryward/shared'
import { elapsedDays } from '../calendar/elapsed.ts'
import { type HusbandryDay, localDate } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import type { FactOf } from '../facts/fact.ts'
import { computedLink, factLink } from '../rule/why.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { cultureEstimateAt } from './culture-estimate.ts'
import {
  type CultureRecord,
  cultureHistory,
  cultureRecord,
  cultureStartedAt,
  type KnownUntil,
} from './culture-history.ts'
import { factsOnDay } from './day-facts.ts'

export type CultureDensity = {
  densityPerMl: number
  /** When it was last counted, or inoculated at a known density. */
  countedAt: Instant
  isEstimated: boolean
  /** The chain of "why" that ends in this density. */
  because: Because[]
}

/** `at`: the moment asked for. `until`: facts from then on are not known yet; usually the end of the day. */
export type DensityMoment = KnownUntil & { at: Instant }

/**
 * A culture as it stood when a day began, so that what is taken today does not move the day's own plan; with what was
 * counted before, though both may have been written down at one instant.
 */
export function asTheDayBegan(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): DensityMoment {
  const [taken] = takenOn(snapshot, culture, day)
  return { at: firstRound(day).startsAt, until: taken?.at ?? day.endsAt, isCountKnown: taken !== undefined }
}

/** What was harvested of a culture on a day since it was last begun: what was taken before a restart came out of other water. */
export function takenOn(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): FactOf<'harvest'>[] {
  const startedAt = cultureStartedAt(snapshot, culture, day.endsAt)
  return factsOnDay(snapshot, 'harvest', { subjectId: culture.id, day }).filter(({ at }) => at >= startedAt)
}

// A count speaks for the day it was made; after that what has grown since counts too. common practice
const countHoldsDays = 1
// However sure the forecast, no more than twice and no less than half of what was last seen is believed. common practice
const mostChangeSinceCount = 2

/**
 * A culture's density per mL at an instant: the last count less what was taken out since; from a day after the count
 * on, the estimate from all counts, within twice and half of that. Null while nothing says how dense it is.
 */
export function densityAt(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { at, ...known }: DensityMoment,
): CultureDensity | null {
  const record = cultureRecord(snapshot, culture, known)
  const seen = lastSeen(record)
  if (!seen) return null
  const removals = record.removals.filter(({ fact }) => fact.at >= seen.fact.at && fact.id !== seen.fact.id)
  const added = record.inoculations.filter(({ fact }) => fact.at > seen.fact.at && fact.id !== seen.fact.id)
  const because: Because[] = [
    factLink(seen.fact, {
      label: seen.fact.kind === 'count' ? 'counted' : 'inoculated',
      quantity: { value: seen.densityPerMl, unit: 'per_mL' },
    }),
  ]
  let scaled = seen.densityPerMl
  for (const event of [...removals, ...added].sort((a, b) => (a.fact.at < b.fact.at ? -1 : 1))) {
    if ('fraction' in event) {
      scaled *= 1 - event.fraction
      const label = `left after ${event.fact.kind === 'harvest' ? 'a harvest' : 'a water change'}`
      because.push(
        factLink(event.fact, { label, quantity: { value: 1 - event.fraction, unit: 'share' }, joins: 'times' }),
      )
    } else {
      scaled += event.densityPerMl
      const quantity = { value: event.densityPerMl, unit: 'per_mL' } as const
      because.push(factLink(event.fact, { label: 'inoculated since', quantity, joins: 'plus' }))
    }
  }
  const seenThen = { countedAt: seen.fact.at, isEstimated: false, because, densityPerMl: scaled }
  // Growth is known of rotifers only: of anything else the last count stands.
  if (culture.kind !== 'rotifer' || elapsedDays(seen.fact.at, at) <= countHoldsDays || scaled === 0) return seenThen
  const estimate = estimateOf(record, culture, at)
  if (!estimate) return seenThen
  const believed = Math.max(
    scaled / mostChangeSinceCount,
    Math.min(scaled * mostChangeSinceCount, estimate.densityPerMl),
  )
  // As shown, so that the chain of "why" multiplies out.
  const densityPerMl = Number(believed.toPrecision(3))
  because.push(
    computedLink('grown since, by all counts', null, {
      label: 'by now',
      quantity: { value: densityPerMl, unit: 'per_mL' },
    }),
  )
  return { ...seenThen, isEstimated: true, densityPerMl }
}

function lastSeen(record: CultureRecord) {
  const count = record.counts.at(-1)
  const start = record.inoculations.at(-1)
  if (!count) return start
  return count
}

function estimateOf(record: CultureRecord, culture: SnapshotCulture, at: Instant): CultureEstimate | null {
  const history = cultureHistory(record, culture)
  return history && cultureEstimateAt(history, elapsedDays(record.startedAt, at))
}

export type CultureOutlook = { record: CultureRecord; estimate: CultureEstimate; ageDays: number }

/** The estimate of a culture at an instant with what it rests on; null while nothing says how dense it is. */
export function cultureOutlook(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { at, ...known }: DensityMoment,
): CultureOutlook | null {
  const record = cultureRecord(snapshot, culture, known)
  const estimate = estimateOf(record, culture, at)
  return estimate && { record, estimate, ageDays: Math.max(0, elapsedDays(record.startedAt, at)) }
}

export type CultureStart = { id: Id; startedOn: string }

const startsKnown = rememberedBySnapshot<readonly CultureStart[]>()

/** When each culture of a kind was (re)started, by local dates, the oldest first. */
export function cultureStarts(
  snapshot: RoomSnapshot,
  kind: SnapshotCulture['kind'],
  until: Instant,
): readonly CultureStart[] {
  return startsKnown(snapshot, `${kind} ${until}`, () =>
    snapshot.cultures
      .filter((culture) => culture.kind === kind)
      .map((culture) => ({ id: culture.id, startedOn: cultureStartDate(snapshot, culture, until) }))
      .sort((a, b) => (`${a.startedOn} ${a.id}` < `${b.startedOn} ${b.id}` ? -1 : 1)),
  )
}

/** Local date on which a culture was (re)started. */
export function cultureStartDate(snapshot: RoomSnapshot, culture: SnapshotCulture, until: Instant): string {
  return localDate({ timeZone: snapshot.room.timeZone, at: cultureStartedAt(snapshot, culture, until) })
}
