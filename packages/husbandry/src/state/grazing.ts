import { type Grazing, type GrazingObservation, learnGrazing } from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { elapsedDays } from '../calendar/elapsed.ts'
import { countDensity } from '../facts/count-density.ts'
import type { FactOf } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { batchNumbers } from './batch-state.ts'
import { factsUntil } from './day-facts.ts'

export type PreyCount = { fact: FactOf<'count'>; perMl: number; animalsCounted: number }
export type Prey = 'rotifers' | 'artemia'

const targetOf = { rotifers: 'prey_rotifers', artemia: 'prey_artemia' } as const
// A day and a half apart, births and losses of prey drown what was eaten. common practice
const longestDays = 1
const mostRemembered = 12

/** Counts of prey in a batch's water, oldest first. */
export function preyCounts(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { prey, until }: { prey: Prey; until: Instant },
): PreyCount[] {
  return factsUntil(snapshot, 'count', { subjectId: batch.id, until }).flatMap((fact) => {
    const { of, animals, volumeMl, dilution } = fact.data
    if (of !== targetOf[prey] || volumeMl === undefined) return []
    const { densityPerMl, animalsCounted } = countDensity({ animals, volumeMl, dilution })
    return [{ fact, perMl: densityPerMl, animalsCounted }]
  })
}

export function preyFeedings(
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  { prey, until }: { prey: Prey; until: Instant },
): FactOf<'feeding'>[] {
  return factsUntil(snapshot, 'feeding', { subjectId: batch.id, until }).filter((fact) => fact.data.food === prey)
}

/**
 * What one larva of this batch eats an hour, from its own counts before and after feeding; null with nothing to learn
 * from (the published upper bound is no estimate and is not used for one).
 */
export function grazingOf(
  snapshot: RoomSnapshot,
  { batch, tank, prey, until }: { batch: SnapshotBatch; tank: SnapshotTank; prey: Prey; until: Instant },
): Grazing | null {
  const larvae = batchNumbers(snapshot, batch).now
  if (larvae === null || larvae < 1) return null
  const counts = preyCounts(snapshot, batch, { prey, until })
  const feedings = preyFeedings(snapshot, batch, { prey, until })
  const observations = counts.slice(1).flatMap((after, index): GrazingObservation[] => {
    const before = counts[index]!
    const between = feedings.filter(({ at }) => at >= before.fact.at && at < after.fact.at)
    const [feeding] = between
    const animals = feeding?.data.animals
    // Two feeds between two counts leave open which of them was eaten.
    if (!feeding || animals === undefined || between.length !== 1) return []
    const hours = elapsedDays(feeding.at, after.fact.at) * 24
    const beforePerMl = before.perMl + animals / (tank.volumeL * 1000)
    if (hours <= 0 || hours > longestDays * 24 || beforePerMl <= 0) return []
    return [{ beforePerMl, afterPerMl: after.perMl, hours, larvae, volumeL: tank.volumeL }]
  })
  if (observations.length === 0) return null
  return learnGrazing({ observations: observations.slice(-mostRemembered) })
}
