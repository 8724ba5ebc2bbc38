import type { Fact, Instant } from '@fryward/shared'

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
