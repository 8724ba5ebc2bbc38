import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { larvalSiphonDefinition } from '../definitions/larvae/larval-siphon.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { larvalDiet, tankOf } from '../state/larval-diet.ts'
import { larvalChange } from './larval-change-plan.ts'

/** True when the bottom of a batch's tank is siphoned on its own that day; not when that goes with a water change. */
export function isSiphonDue(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): boolean {
  const { isOn, parameters } = ruleInForce(snapshot, larvalSiphonDefinition)
  const diet = larvalDiet(batch, day.date)
  if (!isOn || !diet || !tankOf(snapshot, batch) || diet.day < parameters.fromDay) return false
  const siphoned = factsOnDay(snapshot, 'care', { subjectId: batch.id, day }).some(
    ({ data }) => data.act === 'siphon_bottom',
  )
  // Whoever changes the water takes it from the bottom: the change asks for the dead itself.
  return !siphoned && !larvalChange(snapshot, batch, day)
}
