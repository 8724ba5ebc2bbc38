import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { larvalLightDefinition } from '../definitions/larvae/larval-light.ts'
import { larvalLookDefinition } from '../definitions/larvae/larval-look.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { isCareDue } from '../state/care.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'
import { type LarvalDiet, larvalDiet, tankOf } from '../state/larval-diet.ts'
import { type TankLight, tankLight } from '../state/tank-light.ts'

/** How a room runs the look. */
const lookInForce = (snapshot: RoomSnapshot) => ruleInForce(snapshot, larvalLookDefinition)

export type LarvalLook = {
  diet: LarvalDiet
  last: FactOf<'observation'> | undefined
  /** True when the light is due too: it is looked at in the same minute. */
  withLight: boolean
  /** What it should be. */
  light: TankLight
}

/** The look at a batch that a day asks for; null when none is due. */
export function larvalLookDue(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): LarvalLook | null {
  const { isOn, parameters } = lookInForce(snapshot)
  const diet = larvalDiet(batch, day.date)
  if (!isOn || !diet || diet.day < 0) return null
  const last = factsUntil(snapshot, 'observation', { subjectId: batch.id, until: day.endsAt }).at(-1)
  const since = daysSince(snapshot, last, day.date)
  if (since !== null && since < parameters.everyDays) return null
  const light = tankLight(snapshot, tankOf(snapshot, batch))
  return { diet, last, withLight: isLightDue(snapshot, batch, day), light }
}

function isLightDue(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): boolean {
  const { isOn, parameters } = ruleInForce(snapshot, larvalLightDefinition)
  const about = { subjectId: batch.id, day, daysWithout: Number.POSITIVE_INFINITY }
  return isOn && isCareDue(snapshot, 'check_light', { ...about, everyDays: parameters.everyDays })
}

/** Whether a room asks for looks at all: where it does not, the light is checked on its own. */
export function asksForLooks(snapshot: RoomSnapshot): boolean {
  return lookInForce(snapshot).isOn
}
