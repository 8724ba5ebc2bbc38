import type { PlainDate } from '@fryward/shared'
import { daysBetween } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { findSpecies, type SpeciesProfile } from '../species/index.ts'

/** Day 0 is the morning after the hatch night, as in the species profiles; negative before it. */
export function dayOfLife(batch: Pick<SnapshotBatch, 'hatchedOn'>, date: PlainDate): number {
  return daysBetween(batch.hatchedOn, date) - 1
}

export type LarvalDiet = {
  day: number
  species: SpeciesProfile
  isOnRotifers: boolean
}

/** What a batch eats on a date by its species' profile; null for a species that the package does not know. */
export function larvalDiet(batch: SnapshotBatch, date: PlainDate): LarvalDiet | null {
  const species = findSpecies(batch.species)
  if (!species) return null
  const day = dayOfLife(batch, date)
  const { feeding } = species
  const lastRotiferDay = feeding.rotiferLastDay.value
  return {
    day,
    species,
    isOnRotifers:
      hasBegunToFeed(species, day) &&
      feeding.rotifersPerMl.value !== null &&
      lastRotiferDay !== null &&
      day <= lastRotiferDay,
  }
}

/** Whether larvae on a day of their life eat yet. */
export const hasBegunToFeed = ({ feeding }: SpeciesProfile, day: number): boolean => day >= feeding.firstFeedDay.value

export function tankOf(snapshot: RoomSnapshot, { tankId }: { tankId: string }): SnapshotTank | undefined {
  return snapshot.tanks.find((tank) => tank.id === tankId)
}
