import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { countDensity } from '../facts/count-density.ts'
import type { Fact } from '../facts/fact.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { factsUntil } from '../state/day-facts.ts'
import { keptHarvest } from './artemia-hatch.ts'

/** How dense the nauplii of a hatch stand in their jar, counted at or since a harvest that is still food; null while nobody has. */
export function naupliiJar(
  snapshot: RoomSnapshot,
  vessel: SnapshotCulture,
  day: HusbandryDay,
): { fact: Fact; perMl: number } | null {
  const about = { subjectId: vessel.id, until: day.endsAt }
  const harvest = keptHarvest(snapshot, vessel, day)
  if (!harvest) return null
  const fact = factsUntil(snapshot, 'count', about).findLast(
    ({ at, data }) => at >= harvest.at && data.of === 'culture' && data.volumeMl !== undefined,
  )
  if (fact?.data.volumeMl === undefined) return null
  const { animals, volumeMl, dilution } = fact.data
  const perMl = countDensity({ animals, volumeMl, dilution }).densityPerMl
  return perMl > 0 ? { fact, perMl } : null
}
