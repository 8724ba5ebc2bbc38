import type { CultureHistory } from '@fryward/live-feed'
import type { FactOf, Id, Instant } from '@fryward/shared'
import { addMinutes, elapsedDays } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot.ts'
import { countDensity } from './count-density.ts'
import { factsUntil } from './day-facts.ts'
import { rememberedBySnapshot } from './memo.ts'

export type CultureCount = {
  fact: FactOf<'count'>
  densityPerMl: number
  animalsCounted: number
  eggRatio: number | null
}
export type CultureInoculation = { fact: FactOf<'inoculation'>; densityPerMl: number }
export type CultureRemovalFact = { fact: FactOf<'harvest'> | FactOf<'water_change'>; volumeL: number; fraction: number }

/** What was counted, put in and taken out of a culture since it was last set up, oldest first. */
export type CultureRecord = {
  /** When it was started, or last restarted in a clean vessel. */
  startedAt: Instant
  counts: CultureCount[]
  inoculations: CultureInoculation[]
  removals: CultureRemovalFact[]
}

// An older count or inoculation says nothing of what swims there today; it is also as far as facts are loaded.
// common practice
const speaksForDays = 60
/** A removal leaves something behind, or there is no culture to go on with. */
const mostRemoved = 0.999
// Where the published growth and egg times hold (live-feed): outside, the water's warmth is left out of the estimate.
const knownTemperatureC = { from: 5, to: 35 }

const remembered = rememberedBySnapshot<CultureRecord>()

export function cultureRecord(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { until }: { until: Instant },
): CultureRecord {
  return remembered(snapshot, `${culture.id} ${until}`, () => readRecord(snapshot, culture, until))
}

function readRecord(snapshot: RoomSnapshot, culture: SnapshotCulture, until: Instant): CultureRecord {
  const about = { subjectId: culture.id, until }
  const restartedAt = factsUntil(snapshot, 'care', about).findLast((fact) => fact.data.act === 'restart_culture')?.at
  const startedAt = restartedAt !== undefined && restartedAt > culture.startedAt ? restartedAt : culture.startedAt
  const since = addMinutes(until, -speaksForDays * 24 * 60)
  const isSince = (fact: { at: Instant }) => fact.at >= startedAt && fact.at >= since
  return {
    startedAt,
    counts: factsUntil(snapshot, 'count', about).filter(isSince).flatMap(toCount),
    inoculations: factsUntil(snapshot, 'inoculation', about)
      .filter(isSince)
      .flatMap((fact) => toInoculation(fact, culture)),
    removals: removalsOf(snapshot, about, culture).filter(({ fact }) => isSince(fact)),
  }
}

function toCount(fact: FactOf<'count'>): CultureCount[] {
  const { of, animals, volumeMl, dilution, eggs, females } = fact.data
  if (of !== 'culture' || volumeMl === undefined) return []
  const { densityPerMl, animalsCounted } = countDensity({ animals, volumeMl, dilution })
  const eggRatio = eggs === undefined || females === undefined ? null : eggs / females
  return [{ fact, densityPerMl, animalsCounted, eggRatio }]
}

function toInoculation(fact: FactOf<'inoculation'>, culture: SnapshotCulture): CultureInoculation[] {
  const { densityPerMl, animals } = fact.data
  if (densityPerMl !== undefined) return [{ fact, densityPerMl }]
  return animals === undefined ? [] : [{ fact, densityPerMl: animals / (culture.volumeL * 1000) }]
}

function removalsOf(
  snapshot: RoomSnapshot,
  about: { subjectId: Id; until: Instant },
  culture: SnapshotCulture,
): CultureRemovalFact[] {
  // Copepods are counted as grown and half-grown, and those the sieve holds back: only nauplii and water leave.
  const isHeldBack = culture.kind === 'copepod'
  const toRemoval = (fact: FactOf<'harvest'> | FactOf<'water_change'>, volumeL: number): CultureRemovalFact[] =>
    volumeL > 0 && !isHeldBack ? [{ fact, volumeL, fraction: Math.min(mostRemoved, volumeL / culture.volumeL) }] : []
  return [
    ...factsUntil(snapshot, 'harvest', about).flatMap((fact) => toRemoval(fact, fact.data.volumeL)),
    ...factsUntil(snapshot, 'water_change', about).flatMap((fact) => toRemoval(fact, fact.data.removedL)),
  ].sort((a, b) => (a.fact.at < b.fact.at ? -1 : a.fact.at > b.fact.at ? 1 : a.fact.id < b.fact.id ? -1 : 1))
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
