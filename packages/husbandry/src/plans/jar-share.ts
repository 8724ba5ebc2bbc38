import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { harvestDue, hatchVessels } from './artemia-hatch.ts'
import { artemiaStillWanted } from './artemia-need.ts'
import type { NaupliiJar } from './nauplii-jar.ts'

/**
 * The part of what each feed asks for that the jar has, alike for all that eat of it until the next hatch is out today: the
 * first to be fed leaves as much to the last. 1 where it is enough, or nobody knows how much the jar holds.
 */
export function jarShare(snapshot: RoomSnapshot, jar: NaupliiJar, day: HusbandryDay): number {
  if (jar.leftMl === null) return 1
  const out = hatchVessels(snapshot).flatMap((vessel) => harvestDue(snapshot, vessel, day)?.at ?? [])
  const before = out.sort()[0] ?? day.endsAt
  const wanted = livingBatches(snapshot).reduce(
    (sum, batch) => sum + artemiaStillWanted(snapshot, batch, { day, before }),
    0,
  )
  return wanted > 0 ? Math.min(1, (jar.leftMl * jar.perMl) / wanted) : 1
}
