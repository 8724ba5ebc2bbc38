import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { liveFeedRounds } from '../calendar/light.ts'
import type { DayRound } from '../calendar/rounds.ts'
import { larvalPreyTopUpDefinition } from '../definitions/larvae/larval-prey-top-up.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'

/** How a room runs the top-up. */
export function topUpInForce(snapshot: RoomSnapshot) {
  return ruleInForce(snapshot, larvalPreyTopUpDefinition)
}

/** The rounds at which a batch is fed rotifers. */
export function preyFeedRounds(snapshot: RoomSnapshot, day: HusbandryDay): DayRound[] {
  return liveFeedRounds(day, { number: topUpInForce(snapshot).parameters.feedsPerDay, hoursBeforeDark: 0 })
}
