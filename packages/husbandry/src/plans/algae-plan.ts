import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { microalgaeSplitDefinition } from '../definitions/microalgae/microalgae-split.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { algaeDrawn } from '../state/algae-drawn.ts'
import { cultureStartDate } from '../state/culture-state.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'
import { measurableL, measurableLDown } from '../task/measures.ts'

/** Litres to take off a microalgae culture beside what was fed from it, and to fill it up with. */
export type AlgaeSplit = { litres: number; drawnL: number; filledL: number }

/**
 * The split of a microalgae culture: what was fed from it since the last one is a part of it, and once that is all of it the
 * culture is filled up sooner. Null when it is no such culture, not due, or was last seen pale or clear.
 */
export function algaeSplit(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): AlgaeSplit | null {
  const { isOn, parameters } = ruleInForce(snapshot, microalgaeSplitDefinition)
  if (!isOn || culture.kind !== 'microalgae') return null
  const about = { subjectId: culture.id, until: day.endsAt }
  const { last, drawnL } = algaeDrawn(snapshot, culture, day)
  const since =
    daysSince(snapshot, last, day.date) ?? daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date)
  const look = factsUntil(snapshot, 'observation', about).at(-1)
  const isPale = look?.data.signs.some((sign) => sign === 'water_tinted' || sign === 'water_clear') === true
  const wholeL = culture.volumeL * parameters.share
  if ((since < parameters.everyDays && drawnL < wholeL) || isPale) return null
  const litres = drawnL > 0 ? measurableLDown(Math.max(0, wholeL - drawnL)) : measurableL(wholeL)
  return { litres, drawnL, filledL: Math.min(culture.volumeL, measurableL(litres + drawnL)) }
}
