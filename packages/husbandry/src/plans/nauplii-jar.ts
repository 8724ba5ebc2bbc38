import type { Instant } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { countDensity } from '../facts/count-density.ts'
import type { Fact, FactOf } from '../facts/fact.ts'
import { feedsFrom } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { factsUntil } from '../state/day-facts.ts'
import { keptHarvest } from './artemia-hatch.ts'

export type NaupliiJar = {
  fact: Fact
  perMl: number
  /** Nauplii in it when it was filled; null where nobody wrote down its mL. */
  heldAnimals: number | null
  /** mL that no feed has taken yet; null likewise. */
  leftMl: number | null
}

/**
 * How dense the nauplii of a hatch stand in their jar, counted at or since a harvest that is still food, and how much of it is
 * left; null while nobody has counted.
 */
export function naupliiJar(snapshot: RoomSnapshot, vessel: SnapshotCulture, day: HusbandryDay): NaupliiJar | null {
  const harvest = keptHarvest(snapshot, vessel, day)
  return harvest && jarOf(snapshot, { vessel, harvest, until: day.endsAt })
}

/** The jar of one harvest, until the next one. */
export function jarOf(
  snapshot: RoomSnapshot,
  { vessel, harvest, until }: { vessel: SnapshotCulture; harvest: FactOf<'harvest'>; until: Instant },
): NaupliiJar | null {
  const about = { subjectId: vessel.id, until }
  const next = factsUntil(snapshot, 'harvest', about).find(({ at }) => at > harvest.at)?.at ?? until
  const isOfIt = ({ at }: { at: Instant }) => at >= harvest.at && at < next
  const fact = factsUntil(snapshot, 'count', about).findLast(
    (count) => isOfIt(count) && count.data.of === 'culture' && count.data.volumeMl !== undefined,
  )
  if (fact?.data.volumeMl === undefined) return null
  const { animals, volumeMl, dilution } = fact.data
  const perMl = countDensity({ animals, volumeMl, dilution }).densityPerMl
  if (perMl <= 0) return null
  const { keptMl } = harvest.data
  if (keptMl === undefined) return { fact, perMl, heldAnimals: null, leftMl: null }
  const takenMl = feedsFrom(snapshot, vessel.id)
    .filter(isOfIt)
    .reduce((sum, { data }) => sum + (data.amountMl ?? (data.animals ?? 0) / perMl), 0)
  return { fact, perMl, heldAnimals: keptMl * perMl, leftMl: Math.max(0, keptMl - takenMl) }
}
