import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { liveFeedRounds } from '../calendar/light.ts'
import type { DayRound } from '../calendar/rounds.ts'
import { pairFeedDefinition } from '../definitions/broodstock/pair-feed.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotPair } from '../snapshot/room-snapshot.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { isDoneInRound } from '../state/done-in-round.ts'
import { tankOf } from '../state/larval-diet.ts'
import { litDay } from '../state/tank-light.ts'
import { hasFloatingEggs } from './floating-eggs.ts'

/** A pair's feeding rounds, and those of them that still have something to ask. */
export function pairFeedRounds(
  snapshot: RoomSnapshot,
  pair: SnapshotPair,
  day: HusbandryDay,
): { rounds: DayRound[]; asked: DayRound[] } {
  const { isOn, parameters } = ruleInForce(snapshot, pairFeedDefinition)
  const number = pair.isResting ? parameters.restingFeedsPerDay : parameters.feedsPerDay
  // Fish that hunt by eye leave in the dark what is given then.
  const rounds = liveFeedRounds(litDay(snapshot, tankOf(snapshot, pair), day.date), { number, hoursBeforeDark: 0 })
  const fed = factsOnDay(snapshot, 'feeding', { subjectId: pair.id, day })
  return { rounds, asked: isOn ? rounds.filter((round) => !isDoneInRound(fed, { day, rounds, round })) : [] }
}

/** The feed with which eggs are looked for: the day's last in the light, when what was laid since noon is there. */
export function eggLookFeed(snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): DayRound | undefined {
  // What is laid at dusk is there after it.
  if (hasFloatingEggs(pair)) return undefined
  const { rounds, asked } = pairFeedRounds(snapshot, pair, day)
  const { lightsOnAt, lightsOffAt } = litDay(snapshot, tankOf(snapshot, pair), day.date)
  const last = rounds.findLast(({ startsAt }) => startsAt >= lightsOnAt && startsAt < lightsOffAt)
  // Given without its task it asks nothing more, and an earlier one may be done already.
  return asked.find((round) => round === last)
}
