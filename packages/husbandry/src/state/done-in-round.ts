import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, roundOfInstant } from '../calendar/rounds.ts'
import type { Fact } from '../facts/fact.ts'

/**
 * True when something was written down for a round without its task (a noon count, a feed given early): the task has
 * nothing left to ask. What a task's own sign-off wrote does not count here; that task is done and stays.
 */
export function isDoneInRound(
  facts: readonly Fact[],
  { day, rounds, round }: { day: HusbandryDay; rounds: readonly DayRound[]; round: DayRound },
): boolean {
  return facts
    .filter((fact) => fact.taskId === null && fact.at >= day.startsAt && fact.at < day.endsAt)
    .some((fact) => roundOfInstant(rounds, fact.at)?.id === round.id)
}
