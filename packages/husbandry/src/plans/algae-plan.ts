import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { microalgaeSplitDefinition } from '../definitions/microalgae/microalgae-split.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { cultureStartDate } from '../state/culture-state.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'
import { measurableL } from '../task/measures.ts'

/** Litres to split off a microalgae culture; null when it is no such culture, not due, or was last seen pale or clear. */
export function algaeSplit(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): { litres: number } | null {
  const { isOn, parameters } = ruleInForce(snapshot, microalgaeSplitDefinition)
  if (!isOn || culture.kind !== 'microalgae') return null
  const about = { subjectId: culture.id, until: day.endsAt }
  const last = factsUntil(snapshot, 'water_change', about).findLast(({ data }) => data.removedL > 0)
  const since =
    daysSince(snapshot, last, day.date) ?? daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date)
  const look = factsUntil(snapshot, 'observation', about).at(-1)
  const isPale = look?.data.signs.some((sign) => sign === 'water_tinted' || sign === 'water_clear') === true
  if (since < parameters.everyDays || isPale) return null
  return { litres: measurableL(culture.volumeL * parameters.share) }
}
