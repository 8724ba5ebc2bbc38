import type { Instant } from '@fryward/shared'
import { hourMs, laterOf } from './elapsed.ts'
import type { HusbandryDay } from './husbandry-day.ts'

export type DayRound = HusbandryDay['rounds'][number]

/** The day's rounds in order of time, however the room has written them. */
export function roundsInOrder(day: HusbandryDay): DayRound[] {
  return [...day.rounds].sort((a, b) => (a.startsAt < b.startsAt ? -1 : a.startsAt > b.startsAt ? 1 : 0))
}

/** `number` rounds spread over the day, first and last always among them; all rounds when there are fewer. */
export const spreadRounds = (day: HusbandryDay, number: number): DayRound[] => spread(roundsInOrder(day), number)

/** The same of any rounds in order. */
export function spread(rounds: DayRound[], number: number): DayRound[] {
  if (number >= rounds.length) return rounds
  if (number <= 1) return rounds.slice(0, Math.max(0, number))
  const indexes = Array.from({ length: number }, (_, k) => Math.round((k * (rounds.length - 1)) / (number - 1)))
  return indexes.map((index) => rounds[index]!)
}

export const firstRound = (day: HusbandryDay): DayRound => roundsInOrder(day)[0]!
export const lastRound = (day: HusbandryDay): DayRound => roundsInOrder(day).at(-1)!
/** The round nearest the middle of the list; the only one, or the later of two. */
export function middleRound(day: HusbandryDay): DayRound {
  const rounds = roundsInOrder(day)
  return rounds[Math.floor(rounds.length / 2)]!
}

/**
 * The round for what can wait until midday: a morning is full enough. In a room of two rounds the morning all the same,
 * for the other is the evening.
 */
export const afterMorning = (day: HusbandryDay): DayRound =>
  day.rounds.length > 2 ? middleRound(day) : firstRound(day)

/** The last round that starts before an instant, or the first of the day. */
export function roundBefore(day: HusbandryDay, at: Instant): DayRound {
  return roundsInOrder(day).findLast((round) => round.startsAt < at) ?? firstRound(day)
}

/** Which of these rounds something done at an instant belongs to: the last that had begun, an hour's head start given. */
export function roundOfInstant(rounds: readonly DayRound[], at: Instant): DayRound | undefined {
  // Whoever starts early is doing this round, not the one before. common practice
  const headStartMs = hourMs
  const ms = Date.parse(at)
  return rounds.findLast((round) => Date.parse(round.startsAt) - headStartMs <= ms) ?? rounds[0]
}

/** When the latest round began in which any of these instants of a day lies; the start of the day with none. */
export function latestRoundOf(rounds: readonly DayRound[], { day, at }: { day: HusbandryDay; at: Instant[] }): Instant {
  const today = at.filter((each) => each > day.startsAt)
  return today.flatMap((each) => roundOfInstant(rounds, each)?.startsAt ?? []).reduce(laterOf, day.startsAt)
}

/** When a round's work in the dark is due: at lights off, or with the round where that begins later. */
export const inTheDark = (day: HusbandryDay, round: DayRound): Instant => laterOf(day.lightsOffAt, round.startsAt)
