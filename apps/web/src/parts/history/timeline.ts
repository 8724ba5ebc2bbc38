import type { Fact, FactOf, PlainDate } from '@fryward/shared'
import { toPlainDate } from '@fryward/words'

/** One line of a day: a record, or that day's feedings folded into one. */
export type TimelineLine = { kind: 'fact'; fact: Fact } | { kind: 'feedings'; facts: FactOf<'feeding'>[] }
export type TimelineDay = { date: PlainDate; lines: TimelineLine[] }

const isStandingFeeding = (fact: Fact): fact is FactOf<'feeding'> => fact.kind === 'feeding' && fact.struckAt === null

function toLines(facts: Fact[], isWhole: boolean): TimelineLine[] {
  const feedings = facts.filter(isStandingFeeding)
  // A day cut by the end of a page may have had more feeds than have come: nothing is summed up yet.
  const isFolded = isWhole && feedings.length > 1
  return facts.flatMap((fact): TimelineLine[] => {
    if (!isFolded || !isStandingFeeding(fact)) return [{ kind: 'fact', fact }]
    return fact === feedings[0] ? [{ kind: 'feedings', facts: feedings }] : []
  })
}

/**
 * Facts, newest first, under the room's days. Two and more feedings of a day fold into one line where the latest of
 * them stood; struck-out ones stay by themselves. `hasOlder` says that the last day may not be whole.
 */
export function toTimeline(
  facts: Fact[],
  { timeZone, hasOlder, isFolding }: { timeZone: string; hasOlder: boolean; isFolding: boolean },
): TimelineDay[] {
  const days = new Map<PlainDate, Fact[]>()
  for (const fact of facts) {
    const date = toPlainDate(fact.at, timeZone)
    days.set(date, [...(days.get(date) ?? []), fact])
  }
  const oldest = [...days.keys()].at(-1)
  return [...days].map(([date, ofDay]) => ({
    date,
    lines: toLines(ofDay, isFolding && !(hasOlder && date === oldest)),
  }))
}
