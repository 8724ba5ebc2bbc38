import type { CultureHistory } from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { addHours, elapsedDays } from '../calendar/elapsed.ts'
import type { CountedDensity } from '../facts/effects.ts'
import type { Fact } from '../facts/fact.ts'
import { effectsOf } from '../facts/index.ts'
import { factsAbout, factsOf } from '../snapshot/facts-of.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'

export type CultureCount = CountedDensity & { fact: Fact }
export type CultureInoculation = { fact: Fact; densityPerMl: number }
export type CultureRemoval = { fact: Fact; volumeL: number; fraction: number }

/** What was counted, put in and taken out of a culture since it was last set up, oldest first. */
export type CultureRecord = {
  /** When it was started, or last restarted in a clean vessel. */
  startedAt: Instant
  counts: CultureCount[]
  inoculations: CultureInoculation[]
  removals: CultureRemoval[]
}

// An older count or inoculation says nothing of what swims there today; it is also as far as facts are loaded.
// common practice
const speaksForDays = 60
// Where the published growth and egg times hold (live-feed): outside, the water's warmth is left out of the estimate.
const knownTemperatureC = { from: 5, to: 35 }

const remembered = rememberedBySnapshot<CultureRecord>()

/** Facts from `until` on are not known yet; with `isCountKnown` a count of that very instant is, as it came before what was taken. */
export type KnownUntil = { until: Instant; isCountKnown?: boolean }

export function cultureRecord(snapshot: RoomSnapshot, culture: SnapshotCulture, known: KnownUntil): CultureRecord {
  const { until, isCountKnown = false } = known
  return remembered(snapshot, `${culture.id} ${until} ${isCountKnown}`, () => readRecord(snapshot, culture, known))
}

/** When a culture was started, or last restarted in a clean vessel. Restarts are care: what is counted moves no start. */
export function cultureStartedAt(snapshot: RoomSnapshot, culture: SnapshotCulture, until: Instant): Instant {
  const restart = factsOf(snapshot, 'care', culture.id).findLast(
    (fact) => fact.at < until && effectsOf(fact).culture?.(fact, culture)?.way === 'restarted',
  )
  return restart && restart.at > culture.startedAt ? restart.at : culture.startedAt
}

function readRecord(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { until, isCountKnown = false }: KnownUntil,
): CultureRecord {
  const happened = factsAbout(snapshot, culture.id)
    .filter((fact) => fact.at < until || (isCountKnown && fact.at === until && fact.kind === 'count'))
    .flatMap((fact) => {
      const effect = effectsOf(fact).culture?.(fact, culture)
      return effect ? [{ fact, ...effect }] : []
    })
  const startedAt = cultureStartedAt(snapshot, culture, until)
  const since = addHours(until, -speaksForDays * 24)
  const record: CultureRecord = { startedAt, counts: [], inoculations: [], removals: [] }
  for (const event of happened) {
    if (event.fact.at < startedAt || event.fact.at < since) continue
    if (event.way === 'counted') record.counts.push(event)
    if (event.way === 'added') record.inoculations.push(event)
    if (event.way === 'removed') record.removals.push(event)
  }
  return record
}

/** Begun again, nothing written of animals put in, and none counted since. */
export function standsEmpty(snapshot: RoomSnapshot, culture: SnapshotCulture, until: Instant): boolean {
  const { startedAt, inoculations, counts } = cultureRecord(snapshot, culture, { until })
  const isEmpty = inoculations.length === 0 && counts.every(({ densityPerMl }) => densityPerMl === 0)
  return isEmpty && startedAt > culture.startedAt
}

/**
 * The record as the estimate wants it, days counted from the (re)start: counts and, before the first count, the
 * inoculation as observations; later inoculations as additions. Null while nothing says how dense it is.
 */
export function cultureHistory(record: CultureRecord, culture: SnapshotCulture): CultureHistory | null {
  const dayOf = (fact: { at: Instant }) => Math.max(0, elapsedDays(record.startedAt, fact.at))
  const firstCountAt = record.counts[0]?.fact.at
  const start = record.inoculations.find(({ fact }) => firstCountAt === undefined || fact.at < firstCountAt)
  const observations = [
    ...(start ? [{ day: dayOf(start.fact), densityPerMl: start.densityPerMl }] : []),
    ...pooledCounts(record.counts).map(({ at, ...observation }) => ({ day: dayOf({ at }), ...observation })),
  ]
  if (observations.length === 0) return null
  return {
    observations: observations.filter((each, index) => index === 0 || each.day > observations[index - 1]!.day),
    removals: record.removals.map(({ fact, fraction }) => ({ day: dayOf(fact), fraction })),
    additions: record.inoculations
      .filter((each) => each !== start)
      .map(({ fact, densityPerMl }) => ({ day: dayOf(fact), addedPerMl: densityPerMl })),
    ...(culture.temperatureC >= knownTemperatureC.from && culture.temperatureC <= knownTemperatureC.to
      ? { temperatureC: culture.temperatureC }
      : {}),
    salinity: culture.salinity,
    ...(culture.strain === null ? {} : { strain: culture.strain }),
  }
}

/** Counts of one instant are one observation, whichever was written first. */
function pooledCounts(counts: readonly CultureCount[]) {
  const byInstant = new Map<Instant, CultureCount[]>()
  for (const count of counts) byInstant.set(count.fact.at, [...(byInstant.get(count.fact.at) ?? []), count])
  const mean = (values: number[]) => values.sort((a, b) => a - b).reduce((sum, value) => sum + value, 0) / values.length
  return [...byInstant].map(([at, same]) => {
    const ratios = same.flatMap(({ eggRatio }) => (eggRatio === null ? [] : [eggRatio]))
    return {
      at,
      densityPerMl: mean(same.map(({ densityPerMl }) => densityPerMl)),
      animalsCounted: same.reduce((sum, { animalsCounted }) => sum + animalsCounted, 0),
      // More than a score of eggs on a female is a slip of the thumb, not a culture.
      ...(ratios.length > 0 ? { eggRatio: Math.min(20, mean(ratios)) } : {}),
    }
  })
}
