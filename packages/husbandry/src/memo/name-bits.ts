/** A set of names, a bit each; names come and go too often for sets of words to be joined at every answer. */
export type NameBits = Uint32Array

/** Gives each name a number, so that a set of them is a row of bits. */
export class NameNumbers {
  readonly #numbers = new Map<string, number>()

  get size(): number {
    return this.#numbers.size
  }

  of(name: string): number {
    const known = this.#numbers.get(name)
    if (known !== undefined) return known
    const number = this.size
    this.#numbers.set(name, number)
    return number
  }

  /** All of some names and of some sets. */
  union(names: Iterable<string>, sets: Iterable<NameBits>): NameBits {
    const numbers = Array.from(names, (name) => this.of(name))
    const all = new Uint32Array((this.size >> 5) + 1)
    for (const number of numbers) all[number >> 5]! |= 1 << (number & 31)
    for (const set of sets) for (let word = 0; word < set.length; word += 1) all[word]! |= set[word]!
    return all
  }
}

/** Whether any of these numbers is in a set; one that came later than the set is not. */
export function hasAny(set: NameBits, numbers: readonly number[]): boolean {
  for (const number of numbers) if (((set[number >> 5] ?? 0) & (1 << (number & 31))) !== 0) return true
  return false
}
