import type { Instant } from '@fryward/shared'
import { addHours, elapsedHours } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { hoursByLight, liveFeedRounds } from '../calendar/light.ts'
import type { DayRound } from '../calendar/rounds.ts'
import { larvalPreyTopUpDefinition } from '../definitions/larvae/larval-prey-top-up.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { litDay, litRoom } from '../state/tank-light.ts'

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

/** Hours by light and dark from each feed of a day to the next one, the last's to the first of tomorrow. */
export const hoursToNextFeed = (
  snapshot: RoomSnapshot,
  { tank, rounds, day }: { tank: SnapshotTank | undefined; rounds: readonly DayRound[]; day: HusbandryDay },
): { light: number; dark: number }[] =>
  rounds.map((round, index) => {
    const to = rounds[index + 1]?.startsAt ?? nextMorning(rounds[0]!, day)
    return hoursByLight(litRoom(snapshot, tank), { from: round.startsAt, to })
  })

/** Rounds keep their time of day. */
const nextMorning = (first: DayRound, day: HusbandryDay): Instant =>
  addHours(day.endsAt, elapsedHours(day.startsAt, first.startsAt))
