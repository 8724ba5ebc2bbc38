import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, firstRound, roundOfInstant, roundsInOrder, spreadRounds } from '../calendar/rounds.ts'
import { rotiferFeedDefinition } from '../definitions/live-food/rotifer-feed.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotConcentrate, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { densityAt } from '../state/culture-state.ts'
import { factsOnDay } from '../state/day-facts.ts'
import { isDoneInRound } from '../state/done-in-round.ts'

export type FeedRounds = {
  /** All rounds at which the culture is fed; a whole day's ration is shared between them. */
  rounds: DayRound[]
  /** Those of the day since it was begun, and the one it was begun in: its first feed is given at once. */
  begun: DayRound[]
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
  const begun = roundsSince(culture, { day, rounds })
  const asked = begun.filter((round) => !isDoneInRound(feedings, { day, rounds: begun, round }))
  return { rounds, begun, asked, isBackup }
}

function roundsSince(
  { startedAt }: SnapshotCulture,
  { day, rounds }: { day: HusbandryDay; rounds: DayRound[] },
): DayRound[] {
  if (startedAt >= day.endsAt) return []
  const later = rounds.filter((round) => round.startsAt >= startedAt)
  if (startedAt < day.startsAt || later.length === rounds.length) return later
  const now = roundOfInstant(roundsInOrder(day), startedAt)
  return now && later.every(({ id }) => id !== now.id) ? [now, ...later] : later
}

export function concentrateOf(snapshot: RoomSnapshot, culture: SnapshotCulture): SnapshotConcentrate | undefined {
  return snapshot.concentrates.find(({ id }) => id === culture.concentrateId)
}

/** True when the day's first round has a feed of this culture to do, with which its walls are brushed. */
export function isFedInFirstRound(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): boolean {
  const { isOn, parameters } = ruleInForce(snapshot, rotiferFeedDefinition)
  if (!isOn || culture.kind !== 'rotifer' || !concentrateOf(snapshot, culture)) return false
  const round = firstRound(day)
  const { asked } = rotiferFeedRounds(snapshot, culture, { day, ...parameters })
  const density = densityAt(snapshot, culture, { at: round.startsAt, until: day.endsAt })
  return asked.some(({ id }) => id === round.id) && (density?.densityPerMl ?? 0) > 0
}
