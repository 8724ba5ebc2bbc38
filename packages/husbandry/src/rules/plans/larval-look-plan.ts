import type { FactOf } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotBatch } from '../../snapshot.ts'
import { isCareDue } from '../../state/care.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { type LarvalDiet, larvalDiet } from '../../state/larval-diet.ts'

export const larvalLookId = 'larval-look'
export const larvalLightId = 'larval-light'

/** Parameters of the look and of the light; here because a siphoning or water change takes both along. */
export const larvalLookParameters = {
  everyDays: {
    type: 'number',
    label: 'from one look to the next',
    unit: 'days',
    default: 2,
    minimum: 1,
    maximum: 14,
    source: commonPractice('every other day; whoever feeds and siphons sees them daily'),
  },
} satisfies Parameters

export const larvalLightParameters = {
  everyDays: {
    type: 'number',
    label: 'from one time to the next',
    unit: 'days',
    default: 7,
    minimum: 1,
    maximum: 366,
    source: commonPractice(
      'weekly where a timer runs it; 1,000-2,000 lux for A. clarkii larvae (methods of a larval experiment)',
    ),
  },
} satisfies Parameters

/** How a room runs the look. */
const lookInForce = (snapshot: RoomSnapshot) =>
  ruleInForce(snapshot, { id: larvalLookId, isOnByDefault: true, parameters: larvalLookParameters })

export type LarvalLook = {
  diet: LarvalDiet
  last: FactOf<'observation'> | undefined
  /** True when the light is due too: it is looked at in the same minute. */
  withLight: boolean
}

/** The look at a batch that a day asks for; null when none is due. */
export function larvalLookDue(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): LarvalLook | null {
  const { isOn, parameters } = lookInForce(snapshot)
  const diet = larvalDiet(batch, day.date)
  if (!isOn || !diet || diet.day < 0) return null
  const last = factsUntil(snapshot, 'observation', { subjectId: batch.id, until: day.endsAt }).at(-1)
  const since = daysSince(snapshot, last, day.date)
  if (since !== null && since < parameters.everyDays) return null
  return { diet, last, withLight: isLightDue(snapshot, batch, day) }
}

function isLightDue(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): boolean {
  const rule = { id: larvalLightId, isOnByDefault: true, parameters: larvalLightParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  const about = { subjectId: batch.id, day, daysWithout: Number.POSITIVE_INFINITY }
  return isOn && isCareDue(snapshot, 'check_light', { ...about, everyDays: parameters.everyDays })
}

/** Whether a room asks for looks at all: where it does not, the light is checked on its own. */
export function asksForLooks(snapshot: RoomSnapshot): boolean {
  return lookInForce(snapshot).isOn
}
