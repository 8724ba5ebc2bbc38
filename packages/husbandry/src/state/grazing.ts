import { type Grazing, type GrazingObservation, learnGrazing } from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { elapsedDays, elapsedHours } from '../calendar/elapsed.ts'
import { hoursByLight } from '../calendar/light.ts'
import { countDensity } from '../facts/count-density.ts'
import type { FactOf } from '../facts/fact.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { batchNumbers } from './batch-state.ts'
import { factsUntil } from './day-facts.ts'
import { litRoom } from './tank-light.ts'

export type PreyCount = { fact: FactOf<'count'>; perMl: number; animalsCounted: number }
export type Prey = 'rotifers' | 'artemia'

const targetOf = { rotifers: 'prey_rotifers', artemia: 'prey_artemia' } as const
// A day and a half apart, births and losses of prey drown what was eaten. common practice
const longestDays = 1
const mostRemembered = 12
// They grow, and eat more each day: what was seen earlier than this before the last look says too little. common practice
const longestRememberedDays = 3
// A count tells what is in the water at a feed for so long before it; and what was eaten since, no sooner. common practice
const mostHoursBeforeFeed = 2
const leastHoursAfterFeed = 1

const countsKnown = rememberedBySnapshot<readonly PreyCount[]>()

/** Counts of prey in a batch's water, oldest first. */
export function preyCounts(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { prey, until }: { prey: Prey; until: Instant },
): readonly PreyCount[] {
  return countsKnown(snapshot, `${batch.id} ${prey} ${until}`, () =>
    factsUntil(snapshot, 'count', { subjectId: batch.id, until }).flatMap((fact) => {
      const { of, animals, volumeMl, dilution } = fact.data
      if (of !== targetOf[prey] || volumeMl === undefined) return []
      const { densityPerMl, animalsCounted } = countDensity({ animals, volumeMl, dilution })
      return [{ fact, perMl: densityPerMl, animalsCounted }]
    }),
  )
}

export function preyFeedings(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { prey, until }: { prey: Prey; until: Instant },
): FactOf<'feeding'>[] {
  return factsUntil(snapshot, 'feeding', { subjectId: batch.id, until }).filter((fact) => fact.data.food === prey)
}

/** What one larva eats an hour, in the light and in the dark, each learned from this batch's own counts. */
export type LearnedGrazing = { light: Grazing | null; dark: Grazing | null }

// An interval speaks for the light when nearly all of it was light, and so for the dark; others for neither.
// common practice
const nearlyAll = 0.8

/**
 * What one larva of this batch eats an hour, from its own counts before and after feeding; null with nothing to learn
 * from (the published upper bound is no estimate and is not used for one).
 */
export function grazingOf(snapshot: RoomSnapshot, of: Grazers): LearnedGrazing | null {
  const { batch, tank, prey, until } = of
  return grazingKnown(snapshot, `${batch.id} ${tank.id} ${prey} ${until}`, () => learnedFromCounts(snapshot, of))
}

type Grazers = { batch: SnapshotBatch; tank: SnapshotTank; prey: Prey; until: Instant }
const grazingKnown = rememberedBySnapshot<LearnedGrazing | null>()

function learnedFromCounts(snapshot: RoomSnapshot, { batch, tank, prey, until }: Grazers): LearnedGrazing | null {
  const larvae = batchNumbers(snapshot, batch).now
  if (larvae === null || larvae < 1) return null
  const counts = preyCounts(snapshot, batch, { prey, until })
  const feedings = preyFeedings(snapshot, batch, { prey, until })
  const observations = counts
    .slice(1)
    .flatMap((after, index) => seenBetween(snapshot, { before: counts[index]!, after, feedings, batch, tank, larvae }))
  const learned = {
    light: learnFrom(observations.filter(({ lightShare }) => lightShare >= nearlyAll)),
    dark: learnFrom(observations.filter(({ lightShare }) => lightShare <= 1 - nearlyAll)),
  }
  return learned.light || learned.dark ? learned : null
}

type Between = {
  before: PreyCount
  after: PreyCount
  feedings: readonly FactOf<'feeding'>[]
  batch: SnapshotBatch
  tank: SnapshotTank
  larvae: number
}

/** What two counts tell with no feed between them, or one just after the first; nothing where it came long after, or two did. */
function seenBetween(snapshot: RoomSnapshot, { before, after, feedings, batch, tank, larvae }: Between): SeenGrazing[] {
  const between = feedings.filter(({ at }) => at >= before.fact.at && at < after.fact.at)
  const [feeding] = between
  const animals = feeding ? feeding.data.animals : 0
  // Two feeds between two counts leave open which of them was eaten.
  if (animals === undefined || between.length > 1) return []
  const from = feeding?.at ?? before.fact.at
  if (elapsedHours(before.fact.at, from) > mostHoursBeforeFeed) return []
  const { light, dark } = hoursByLight(litRoom(snapshot, tank), { from, to: after.fact.at })
  const hours = light + dark
  const beforePerMl = before.perMl + animals / (tank.volumeL * 1000)
  if (hours < leastHoursAfterFeed || hours > longestDays * 24 || beforePerMl <= 0) return []
  // What left with the water was not eaten.
  const dilutionPerDay = changedShare(snapshot, { batch, tank, from, to: after.fact.at }) * (24 / hours)
  const seen = { beforePerMl, afterPerMl: after.perMl, hours, larvae, volumeL: tank.volumeL, dilutionPerDay }
  return [{ ...seen, at: after.fact.at, lightShare: light / hours, isAllEaten: after.animalsCounted === 0 }]
}

/** The part of a tank’s water that was changed after an instant. */
export function changedShare(
  snapshot: RoomSnapshot,
  { batch, tank, from, to }: { batch: SnapshotBatch; tank: SnapshotTank; from: Instant; to: Instant },
): number {
  const changes = [tank.id, batch.id].flatMap((subjectId) =>
    factsUntil(snapshot, 'water_change', { subjectId, until: to }).filter(({ at }) => at > from),
  )
  return changes.reduce((sum, { data }) => sum + data.removedL, 0) / tank.volumeL
}

type SeenGrazing = GrazingObservation & { at: Instant; lightShare: number; isAllEaten: boolean }

/**
 * The mean of what was seen in the last days. A tank found empty says that they ate that much or more: it never lowers the mean, and
 * where it says more than the mean does, more it is.
 */
function learnFrom(observations: readonly SeenGrazing[]): Grazing | null {
  const newest = observations.at(-1)
  if (!newest) return null
  const isFresh = ({ at }: SeenGrazing) => elapsedDays(at, newest.at) <= longestRememberedDays
  const last = observations.filter(isFresh).slice(-mostRemembered)
  const seen = last.filter(({ isAllEaten }) => !isAllEaten)
  const least = last.filter(({ isAllEaten }) => isAllEaten).map((each) => learnGrazing({ observations: [each] }))
  const candidates = [...(seen.length > 0 ? [learnGrazing({ observations: seen })] : []), ...least]
  const [first, ...others] = candidates
  if (!first) return null
  const most = others.reduce((a, c) => (c.eatenPerLarvaPerHour > a.eatenPerLarvaPerHour ? c : a), first)
  return { ...most, observations: last.length }
}

/** What a larva is taken to eat an hour until its next feed. Where only the light is known they eat nothing by night. */
export function eatenPerLarvaPerHour({ light, dark }: LearnedGrazing, hours: { light: number; dark: number }): number {
  const all = hours.light + hours.dark
  if (all <= 0) return 0
  const perHour = (grazing: Grazing | null) => grazing?.eatenPerLarvaPerHour ?? 0
  return (hours.light * perHour(light) + hours.dark * perHour(dark)) / all
}
