import type { Fact } from '../facts/fact.ts'
import { effectsOf } from '../facts/index.ts'

const none: readonly Fact[] = []

/**
 * A room's facts by what is asked of them: about one subject (`about <id>`), of one kind about it (`count <id>`), those that
 * have written into its book of animals (`book <id>`), and feeds out of a culture (`fed from <id>`). A list in which nothing has changed stays the same object.
 */
export class FactLists {
  readonly all: readonly Fact[]
  readonly #lists: ReadonlyMap<string, readonly Fact[]>

  private constructor(all: readonly Fact[], lists: ReadonlyMap<string, readonly Fact[]>) {
    this.all = all
    this.#lists = lists
  }

  static of(facts: readonly Fact[]): FactLists {
    return new FactLists(facts, sortedOut(facts))
  }

  named(name: string): readonly Fact[] {
    return this.#lists.get(name) ?? none
  }

  /**
   * The lists of a later moment, in which some facts are new and some are gone, both in order of `at`, then id; and the
   * names of those that are others now, `facts` for all of them.
   */
  next(facts: readonly Fact[]): { lists: FactLists; changed: ReadonlySet<string> } {
    const { added, gone } = difference(this.all, facts)
    if (added.length === 0 && gone.size === 0) return { lists: this, changed: new Set() }
    const lists = new Map(this.#lists)
    const left = new Set([...gone].flatMap(namesOf))
    for (const name of left)
      lists.set(
        name,
        this.named(name).filter((fact) => !gone.has(fact)),
      )
    for (const fact of added) for (const name of namesOf(fact)) lists.set(name, inserted(lists.get(name) ?? none, fact))
    return { lists: new FactLists(facts, lists), changed: new Set(['facts', ...left, ...added.flatMap(namesOf)]) }
  }
}

/** Facts in order of `at`, then id. */
export const isEarlier = (a: Fact, b: Fact): boolean => a.at < b.at || (a.at === b.at && a.id < b.id)

function difference(before: readonly Fact[], after: readonly Fact[]): { added: Fact[]; gone: Set<Fact> } {
  const added: Fact[] = []
  const gone = new Set<Fact>()
  let from = 0
  for (const fact of after) {
    while (from < before.length && before[from] !== fact && isEarlier(before[from]!, fact)) gone.add(before[from++]!)
    if (before[from] === fact) from += 1
    else added.push(fact)
  }
  for (const fact of before.slice(from)) gone.add(fact)
  return { added, gone }
}

function inserted(list: readonly Fact[], fact: Fact): readonly Fact[] {
  const before = list.findLastIndex((each) => isEarlier(each, fact))
  return list.toSpliced(before + 1, 0, fact)
}

function namesOf(fact: Fact): string[] {
  const written = effectsOf(fact).book?.(fact) ?? []
  const books = new Set(written.map((line) => `book ${line.subjectId}`))
  const from = fact.kind === 'feeding' && fact.data.fromCultureId ? [`fed from ${fact.data.fromCultureId}`] : []
  return [`about ${fact.subjectId}`, `${fact.kind} ${fact.subjectId}`, ...books, ...from]
}

function sortedOut(facts: readonly Fact[]): Map<string, readonly Fact[]> {
  const lists = new Map<string, Fact[]>()
  for (const fact of facts)
    for (const name of namesOf(fact)) {
      const list = lists.get(name)
      if (list) list.push(fact)
      else lists.set(name, [fact])
    }
  return lists
}
