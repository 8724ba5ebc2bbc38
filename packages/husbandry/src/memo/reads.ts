/**
 * What a computation rests on: what it read itself, by name and as it was, and the answers that it asked for, which rest on
 * what they read. Only these are kept, not all that lies below: the same facts are read by answers a dozen deep.
 */
export type Reads<A> = { names: ReadonlyMap<string, unknown>; answers: ReadonlySet<A> }

/** Notes what one kind of answer rests on. Computations here are synchronous, so that no more than one reads at a time. */
export class Reader<A> {
  #current: { names: Map<string, unknown>; answers: Set<A> } | null = null

  /** Notes for whoever computes that this was read; gives back what was read. */
  noted<T>(name: string, value: T): T {
    this.#current?.names.set(name, value)
    return value
  }

  /** Notes for whoever computes that this answer was asked for. */
  notedAnswer(answer: A): void {
    this.#current?.answers.add(answer)
  }

  /** Runs a computation and says what it read. */
  readsOf<T>(compute: () => T): { value: T; reads: Reads<A> } {
    const outer = this.#current
    const reads = { names: new Map<string, unknown>(), answers: new Set<A>() }
    this.#current = reads
    try {
      return { value: compute(), reads }
    } catch (thrown) {
      // Whoever catches this goes by what was read until then.
      for (const [name, value] of reads.names) outer?.names.set(name, value)
      for (const answer of reads.answers) outer?.answers.add(answer)
      throw thrown
    } finally {
      this.#current = outer
    }
  }
}
