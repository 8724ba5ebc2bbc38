import { changeFraction } from '@fryward/seawater'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { larvalWaterChangeDefinition } from '../definitions/larvae/larval-water-change.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { larvalDiet, tankOf } from '../state/larval-diet.ts'
import { measurableL } from '../task/measures.ts'
import { type AmmoniaTest, ammoniaActInForce, lastAmmoniaTest } from './ammonia-plan.ts'

/** @property ammonia the test that asks for more than age does; null where age alone says. */
type LarvalChangePlan = { tank: SnapshotTank; share: number; litres: number; ammonia: AmmoniaTest | null }

/** Of the water of larvae, what is changed on a day of their life; 0 where none is. */
export function larvalShare(snapshot: RoomSnapshot, dayOfLife: number): number {
  const { isOn, parameters } = ruleInForce(snapshot, larvalWaterChangeDefinition)
  const { fromDay, firstShare, moreEachDay, mostShare } = parameters
  if (!isOn || dayOfLife < fromDay) return 0
  return Math.min(mostShare, firstShare + (dayOfLife - fromDay) * moreEachDay)
}

/** Water to change for a batch of larvae on a day, by its age and what was read of ammonia; null when none is due or it has been done. */
export const larvalChange = (
  snapshot: RoomSnapshot,
  batch: SnapshotBatch,
  day: HusbandryDay,
): LarvalChangePlan | null => remembered(snapshot, `${batch.id} ${day.date}`, () => workOut(snapshot, batch, day))

const remembered = rememberedBySnapshot<LarvalChangePlan | null>()

function workOut(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): LarvalChangePlan | null {
  const diet = larvalDiet(batch, day.date)
  const tank = tankOf(snapshot, batch)
  const byAge = diet ? larvalShare(snapshot, diet.day) : 0
  if (!tank || byAge === 0) return null
  const changedToday = [tank.id, batch.id].some((subjectId) =>
    factsOnDay(snapshot, 'water_change', { subjectId, day }).some(({ data }) => data.removedL > 0),
  )
  if (changedToday) return null
  const against = shareAgainstAmmonia(snapshot, tank, day)
  const share = Math.max(byAge, against?.share ?? 0)
  const ammonia = against && share > byAge ? against.test : null
  return { tank, share, litres: measurableL(tank.volumeL * share), ammonia }
}

/** As much a day as brings down what the last test read, while it read any to watch: what was excreted once is daily. */
function shareAgainstAmmonia(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay) {
  const { isOn, parameters } = ammoniaActInForce(snapshot)
  const { mostShare } = ruleInForce(snapshot, larvalWaterChangeDefinition).parameters
  const test = isOn ? lastAmmoniaTest(snapshot, tank, day) : null
  if (!test || test.nh3MgPerL <= parameters.watchMgPerL) return null
  const wanted = changeFraction({ current: test.nh3MgPerL, incoming: 0, target: parameters.watchMgPerL })
  return { test, share: Math.min(mostShare, wanted) }
}
