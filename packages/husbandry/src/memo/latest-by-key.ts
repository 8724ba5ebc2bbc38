/**
 * At most `most` things by key, and surely the latest half as many that were put in or asked for. Two halves, of which the older
 * one is dropped whole: a map that loses its oldest key at every new one is walked over all the gaps so made, which cost
 * more than many an answer.
 */
export class LatestByKey<T extends object> {
  readonly #most: number
  #recent = new Map<string, T>()
  #older = this.#recent

  constructor(most: number) {
    this.#most = most
  }

  get(key: string): T | undefined {
    const found = this.#recent.get(key)
    if (found) return found
    const kept = this.#older.get(key)
    if (kept) this.set(key, kept)
    return kept
  }

  set(key: string, value: T): void {
    if (this.#recent.size >= this.#most / 2 && !this.#recent.has(key)) {
      this.#older = this.#recent
      this.#recent = new Map()
    }
    this.#recent.set(key, value)
  }
}
