import type { Phrase } from '@fryward/shared'
import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { harmfulWater } from '../../plans/tank-water-plan.ts'
import type { RoomSnapshot, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { phrase } from '../../task/phrases.ts'
import { isActedOn } from './water-act.ts'

/** Said with every feed of a tank whose last test, of today or yesterday, was harmful: food would add to it. */
export function noFoodSteps(snapshot: RoomSnapshot, tank: SnapshotTank | undefined, day: HusbandryDay): Phrase[] {
  const found = tank && harmfulWater(snapshot, tank, day)
  if (!found || !isActedOn(snapshot, found.fact, day)) return []
  return [
    phrase(`The last test of ${tank.name} read {read} of ${found.of}, as N: no food before a new one reads less.`, {
      read: { value: Number(found.mgPerL.toPrecision(2)), unit: 'mg_per_L' },
    }),
  ]
}
