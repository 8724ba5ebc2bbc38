import type { PlainDate } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { rotiferBrushDefinition } from '../definitions/live-food/rotifer-brush.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { isCareDue, lastCare } from '../state/care.ts'
import { standsEmpty } from '../state/culture-history.ts'
import { cultureStartDate } from '../state/culture-state.ts'

export type Brushing = { startedOn: PlainDate; last: FactOf<'care'> | undefined }

/** What is known of a culture's walls when they are due for the brush; null when they are not. */
export function brushDue(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): Brushing | null {
  const { isOn, parameters } = ruleInForce(snapshot, rotiferBrushDefinition)
  if (!isOn || culture.kind !== 'rotifer' || standsEmpty(snapshot, culture, day.endsAt)) return null
  const startedOn = cultureStartDate(snapshot, culture, day.endsAt)
  const about = { subjectId: culture.id, day }
  const daysWithout = daysBetween(startedOn, day.date)
  if (!isCareDue(snapshot, 'brush_walls', { ...about, everyDays: parameters.everyDays, daysWithout })) return null
  return { startedOn, last: lastCare(snapshot, 'brush_walls', about) }
}
