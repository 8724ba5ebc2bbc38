import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../../snapshot.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { larvalDiet, tankOf } from '../../state/larval-diet.ts'
import { larvalChange } from './change-plan.ts'

export const larvalSiphonId = 'larval-siphon'

export const larvalSiphonParameters = {
  fromDay: {
    type: 'number',
    label: 'old when it begins',
    unit: 'days',
    default: 2,
    minimum: 0,
    maximum: 30,
    source: commonPractice(),
  },
} satisfies Parameters

/** The tank whose bottom is siphoned on its own that day; null when it is not due, or goes with a water change. */
export function siphonDue(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): SnapshotTank | null {
  const rule = { id: larvalSiphonId, isOnByDefault: true, parameters: larvalSiphonParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  const diet = larvalDiet(batch, day.date)
  const tank = tankOf(snapshot, batch)
  if (!isOn || !diet || !tank || diet.day < parameters.fromDay) return null
  const siphoned = factsOnDay(snapshot, 'care', { subjectId: batch.id, day }).some(
    ({ data }) => data.act === 'siphon_bottom',
  )
  // Whoever changes the water takes it from the bottom: the change asks for the dead itself.
  return siphoned || larvalChange(snapshot, batch, day) ? null : tank
}
