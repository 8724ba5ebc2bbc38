import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { larvalWaterChangeDefinition } from '../definitions/larvae/larval-water-change.ts'
import { tankWaterChangeDefinition } from '../definitions/room/tank-water-change.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { daysSince, factsOnDay, factsUntil } from '../state/day-facts.ts'
import { larvalDiet, tankOf } from '../state/larval-diet.ts'
import { holdsFish } from '../state/tank-fish.ts'
import { measurableL } from '../task/measures.ts'

export type ChangePlan = { tank: SnapshotTank; share: number; litres: number }

/** Of the water of larvae, what is changed on a day of their life; 0 where none is. */
export function larvalShare(snapshot: RoomSnapshot, dayOfLife: number): number {
  const { isOn, parameters } = ruleInForce(snapshot, larvalWaterChangeDefinition)
  const { fromDay, firstShare, moreEachDay, mostShare } = parameters
  if (!isOn || dayOfLife < fromDay) return 0
  return Math.min(mostShare, firstShare + (dayOfLife - fromDay) * moreEachDay)
}

/** Water to change for a batch of larvae on a day, by its age; null when none is due or it has been done. */
export function larvalChange(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): ChangePlan | null {
  const diet = larvalDiet(batch, day.date)
  const tank = tankOf(snapshot, batch)
  const share = diet ? larvalShare(snapshot, diet.day) : 0
  if (!tank || share === 0) return null
  const changedToday = [tank.id, batch.id].some((subjectId) =>
    factsOnDay(snapshot, 'water_change', { subjectId, day }).some(({ data }) => data.removedL > 0),
  )
  if (changedToday) return null
  return { tank, share, litres: measurableL(tank.volumeL * share) }
}

/** Water of a tank with grown or growing fish, by the calendar: more where no filter runs. */
export function tankChange(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): ChangePlan | null {
  const { isOn, parameters } = ruleInForce(snapshot, tankWaterChangeDefinition)
  if (!isOn || !holdsFish(snapshot, tank, day)) return null
  const last = factsUntil(snapshot, 'water_change', { subjectId: tank.id, until: day.endsAt }).findLast(
    ({ data }) => data.removedL > 0,
  )
  const since = daysSince(snapshot, last, day.date)
  // A change planned for tomorrow is one that falls due tomorrow: the day's own facts are all that count.
  if (since !== null && since < parameters.everyDays) return null
  const share = tank.hasFilter ? parameters.share : parameters.unfilteredShare
  return { tank, share, litres: measurableL(tank.volumeL * share) }
}
