import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters, published } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotPair } from '../../snapshot.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound } from '../done.ts'
import { type DayRound, spreadRounds } from '../rounds.ts'

export const pairFeedId = 'pair-feed'

/** Parameters of feeding the pairs; here because the look for eggs goes with a feed. */
export const pairFeedParameters = {
  feedsPerDay: {
    type: 'number',
    label: 'a day',
    unit: 'feeds',
    default: 2,
    minimum: 1,
    maximum: 8,
    source: published(
      '3-5 % of body weight a day in 2 feeds, black A. ocellaris: Raheem et al. c. 2021, Indian J. Fish.',
    ),
  },
  restingFeedsPerDay: {
    type: 'number',
    label: 'a day while resting',
    unit: 'feeds',
    default: 1,
    minimum: 1,
    maximum: 8,
    source: commonPractice(),
  },
  minutes: {
    type: 'number',
    label: 'until it is cleared',
    unit: 'minutes',
    default: 2,
    minimum: 1,
    maximum: 15,
    source: commonPractice(),
  },
  varied: { type: 'boolean', label: 'frozen and dry by turns', default: true, source: commonPractice() },
} satisfies Parameters

/** A pair's feeding rounds, and those of them that still have something to ask. */
export function pairFeedRounds(
  snapshot: RoomSnapshot,
  pair: SnapshotPair,
  day: HusbandryDay,
): { rounds: DayRound[]; asked: DayRound[] } {
  const rule = { id: pairFeedId, isOnByDefault: true, parameters: pairFeedParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  const rounds = spreadRounds(day, pair.isResting ? parameters.restingFeedsPerDay : parameters.feedsPerDay)
  const fed = factsOnDay(snapshot, 'feeding', { subjectId: pair.id, day })
  return { rounds, asked: isOn ? rounds.filter((round) => !isDoneInRound(fed, { day, rounds, round })) : [] }
}

/** The feed with which eggs are looked for: the day's last in the light, when what was laid since noon is there. */
export function eggLookFeed(snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): DayRound | undefined {
  const { rounds, asked } = pairFeedRounds(snapshot, pair, day)
  const last = rounds.findLast(({ startsAt }) => startsAt >= day.lightsOnAt && startsAt < day.lightsOffAt)
  // Given without its task it asks nothing more, and an earlier one may be done already.
  return asked.find((round) => round === last)
}
