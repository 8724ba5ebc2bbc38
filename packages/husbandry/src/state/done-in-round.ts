import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, roundOfInstant } from '../calendar/rounds.ts'
import type { Fact } from '../facts/fact.ts'

/**
 * True when something was written down for a round without its task (a noon count, a feed given early), or for a later one:
 * the task has nothing left to ask, for a missed feed is never made up by doubling the next. What a task's own sign-off
 * wrote does not count for its own round; that task is done and stays.
 */
export function isDoneInRound(
  facts: readonly Fact[],
  { day, rounds, round }: { day: HusbandryDay; rounds: readonly DayRound[]; round: DayRound },
): boolean {
  return facts
    .filter((fact) => fact.at >= day.startsAt && fact.at < day.endsAt)
    .some((fact) => {
      const done = roundOfInstant(rounds, fact.at)
      if (!done) return false
      return done.id === round.id ? fact.taskId === null : done.startsAt > round.startsAt
    })
}
