import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters, published } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotConcentrate, SnapshotCulture } from '../../snapshot.ts'
import { densityAt } from '../../state/culture-state.ts'
import { factsOnDay } from '../../state/day-facts.ts'
import { isDoneInRound } from '../done.ts'
import { type DayRound, firstRound, spreadRounds } from '../rounds.ts'

export const rotiferFeedId = 'rotifer-feed'

/** Parameters of feeding; here because what is done with the first feed follows from whether there is one. */
export const rotiferFeedParameters = {
  cellsPerRotiferPerDay: {
    type: 'number',
    label: 'for a full ration',
    unit: 'cells_per_rotifer_per_day',
    default: 75_000,
    minimum: 10_000,
    maximum: 250_000,
    source: published('Pfeiffer & Ludwig 2007, N. Am. J. Aquac. 69:239-243'),
  },
  feedsPerDay: {
    type: 'number',
    label: 'a day',
    unit: 'feeds',
    default: 2,
    minimum: 1,
    maximum: 8,
    source: commonPractice('two feeds a day or more'),
  },
  backupFeedsPerDay: {
    type: 'number',
    label: 'a day for a backup',
    unit: 'feeds',
    default: 1,
    minimum: 1,
    maximum: 8,
    source: commonPractice('a backup is kept thin and left alone: one feed a day carries it'),
  },
  followsWater: {
    type: 'boolean',
    label: 'less when still green, more when clear and sound',
    default: true,
    source: commonPractice(),
  },
} satisfies Parameters

export type FeedRounds = {
  /** All rounds at which the culture is fed. */
  rounds: DayRound[]
  /** Those that still have something to ask. */
  asked: DayRound[]
  isBackup: boolean
}

/** At which rounds of a day a rotifer culture is fed; a backup less often. */
export function rotiferFeedRounds(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { day, feedsPerDay, backupFeedsPerDay }: { day: HusbandryDay; feedsPerDay: number; backupFeedsPerDay: number },
): FeedRounds {
  const { isBackup } = culture
  const rounds = spreadRounds(day, isBackup ? backupFeedsPerDay : feedsPerDay)
  const feedings = factsOnDay(snapshot, 'feeding', { subjectId: culture.id, day })
  const asked = rounds
    .filter((round) => round.startsAt >= culture.startedAt)
    .filter((round) => !isDoneInRound(feedings, { day, rounds, round }))
  return { rounds, asked, isBackup }
}

export function concentrateOf(snapshot: RoomSnapshot, culture: SnapshotCulture): SnapshotConcentrate | undefined {
  return snapshot.concentrates.find(({ id }) => id === culture.concentrateId)
}

/** True when the day's first round has a feed of this culture to do, with which its walls are brushed. */
export function isFedInFirstRound(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): boolean {
  const rule = { id: rotiferFeedId, isOnByDefault: true, parameters: rotiferFeedParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  if (!isOn || culture.kind !== 'rotifer' || !concentrateOf(snapshot, culture)) return false
  const round = firstRound(day)
  const { asked } = rotiferFeedRounds(snapshot, culture, { day, ...parameters })
  const density = densityAt(snapshot, culture, { at: round.startsAt, until: day.endsAt })
  return asked.some(({ id }) => id === round.id) && (density?.densityPerMl ?? 0) > 0
}
