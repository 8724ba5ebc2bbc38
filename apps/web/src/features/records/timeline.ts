import type { Fact, FactKind, FactOf, Instant, PlainDate } from '@fryward/shared'
import { toPlainDate } from '../../dates/say.ts'

/** One line of a day: a record, or that day's feedings folded into one. */
export type TimelineLine = { kind: 'fact'; fact: Fact } | { kind: 'feedings'; facts: FactOf<'feeding'>[] }
export type TimelineDay = { date: PlainDate; lines: TimelineLine[] }

export const factFilters = ['everything', 'counts', 'feedings', 'harvests', 'losses', 'water', 'seen', 'care'] as const
/** What the list can be narrowed to. */
export type FactFilter = (typeof factFilters)[number]

/** The kinds of fact behind each word; none means all of them. */
export const kindsOfFilter: Record<FactFilter, readonly FactKind[]> = {
  everything: [],
  counts: ['count'],
  feedings: ['feeding'],
  harvests: ['harvest'],
  losses: ['loss', 'outcome'],
  water: ['water_change', 'water_test'],
  seen: ['observation'],
  care: ['care', 'treatment', 'decision'],
}

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

type Page = { facts: Fact[]; nextBefore: Instant | null }

/**
 * Pages of several kinds as one page, newest first. It ends where the shortest of them ends, so that the next page
 * misses nothing; what lies beyond comes with that one again.
 */
export function mergePages(pages: Page[]): Page {
  const ends = pages.flatMap((page) => page.nextBefore ?? []).toSorted()
  const nextBefore = ends.at(-1) ?? null
  const facts = pages
    .flatMap((page) => page.facts)
    .filter((fact) => nextBefore === null || fact.at >= nextBefore)
    .toSorted((a, b) => (a.at === b.at ? (a.id < b.id ? 1 : -1) : a.at < b.at ? 1 : -1))
  return { facts, nextBefore }
}
