import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, spreadRounds } from '../calendar/rounds.ts'
import { larvalPreyTopUpDefinition } from '../definitions/larvae/larval-prey-top-up.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'

/** How a room runs the top-up. */
export function topUpInForce(snapshot: RoomSnapshot) {
  return ruleInForce(snapshot, larvalPreyTopUpDefinition)
}

/** The rounds at which a batch is fed. */
export function preyFeedRounds(snapshot: RoomSnapshot, day: HusbandryDay): DayRound[] {
  return spreadRounds(day, topUpInForce(snapshot).parameters.feedsPerDay)
}
