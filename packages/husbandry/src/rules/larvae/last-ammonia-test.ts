import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import type { FactOf } from '../../facts/fact.ts'
import type { RoomSnapshot, SnapshotTank } from '../../snapshot/room-snapshot.ts'
import { factsUntil } from '../../state/day-facts.ts'

/** The last water test of a tank that read its ammonia, up to the end of a day. */
export function lastAmmoniaTest(
  snapshot: RoomSnapshot,
  tank: SnapshotTank,
  day: HusbandryDay,
): FactOf<'water_test'> | undefined {
  return factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt }).findLast(
    ({ data }) => data.totalAmmoniaNMgPerL !== undefined,
  )
}
