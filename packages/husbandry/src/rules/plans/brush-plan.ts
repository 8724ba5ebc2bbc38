import type { FactOf, PlainDate } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot.ts'
import { isCareDue, lastCare } from '../../state/care.ts'
import { cultureStartDate } from '../../state/culture-state.ts'

export const rotiferBrushId = 'rotifer-brush'

/** Parameters of brushing; here because the day's first feed is where it is done. */
export const rotiferBrushParameters = {
  everyDays: {
    type: 'number',
    label: 'from one brushing to the next',
    unit: 'days',
    default: 1,
    minimum: 1,
    maximum: 14,
    source: commonPractice('feeding and brushing are daily'),
  },
} satisfies Parameters

export type Brushing = { startedOn: PlainDate; last: FactOf<'care'> | undefined }

/** What is known of a culture's walls when they are due for the brush; null when they are not. */
export function brushDue(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): Brushing | null {
  const rule = { id: rotiferBrushId, isOnByDefault: true, parameters: rotiferBrushParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  if (!isOn || culture.kind !== 'rotifer') return null
  const startedOn = cultureStartDate(snapshot, culture, day.endsAt)
  const about = { subjectId: culture.id, day }
  const daysWithout = daysBetween(startedOn, day.date)
  if (!isCareDue(snapshot, 'brush_walls', { ...about, everyDays: parameters.everyDays, daysWithout })) return null
  return { startedOn, last: lastCare(snapshot, 'brush_walls', about) }
}
