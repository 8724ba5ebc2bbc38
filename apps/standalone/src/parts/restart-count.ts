// Quick at first, for a crash that was an accident; then slow enough that a machine in trouble is left room to recover.
// common practice
const FIRST_DELAY_MS = 250
const LONGEST_DELAY_MS = 30_000
/** A part that ran this long has recovered: what happened before is forgotten. */
const STEADY_AFTER_MS = 5 * 60_000

/** How often a part ended by itself lately, and how long to wait before it is started again. It never gives up. */
export class RestartCount {
  #inARow = 0

  get inARow(): number {
    return this.#inARow
  }

  /** Notes an end after `ranMs` and gives the wait before the next start, doubling up to half a minute. */
  next(ranMs: number): number {
    if (ranMs > STEADY_AFTER_MS) this.#inARow = 0
    const delayMs = Math.min(FIRST_DELAY_MS * 2 ** this.#inARow, LONGEST_DELAY_MS)
    this.#inARow += 1
    return delayMs
  }
}
