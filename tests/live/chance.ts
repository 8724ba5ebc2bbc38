import { type Random, seededRandom } from '@fryward/live-feed'

/** Luck of one room, the same for the same seed. */
export class Chance {
  readonly #random: Random

  constructor(seed: number) {
    this.#random = seededRandom(seed)
  }

  between(from: number, to: number): number {
    return from + (to - from) * this.#random.uniform()
  }

  normal(): number {
    return this.#random.normal()
  }

  /** A factor about 1 whose logarithm scatters by that much. */
  factor(logSd: number): number {
    return Math.exp(logSd * this.#random.normal())
  }

  isTrue(probability: number): boolean {
    return this.#random.uniform() < probability
  }

  /** How many of a thinly scattered thing a sample holds. */
  poisson(mean: number): number {
    if (mean > 60) return Math.max(0, Math.round(mean + this.#random.normal() * Math.sqrt(mean)))
    const limit = Math.exp(-mean)
    let found = 0
    for (let product = this.#random.uniform(); product > limit; product *= this.#random.uniform()) found += 1
    return found
  }
}
