import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { liveFeedRounds } from '../calendar/light.ts'
import type { DayRound } from '../calendar/rounds.ts'
import { larvalPreyTopUpDefinition } from '../definitions/larvae/larval-prey-top-up.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { litDay } from '../state/tank-light.ts'

/** How a room runs the top-up. */
export function topUpInForce(snapshot: RoomSnapshot) {
  return ruleInForce(snapshot, larvalPreyTopUpDefinition)
}

/** The rounds at which larvae in a tank are fed rotifers. */
export function preyFeedRounds(
  snapshot: RoomSnapshot,
  tank: SnapshotTank | undefined,
  { date }: HusbandryDay,
): DayRound[] {
  return liveFeedRounds(litDay(snapshot, tank, date), {
    number: topUpInForce(snapshot).parameters.feedsPerDay,
    hoursBeforeDark: 0,
  })
}
