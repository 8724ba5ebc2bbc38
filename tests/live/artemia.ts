import type { Chance } from './chance.ts'

// Of good cysts, by the tin: Treece 2000, SRAC Publication 702.
const naupliiPerGram = { from: 200_000, to: 300_000 }
const hoursAt28 = 24
const hoursMorePerC = 2.2
const coldLifeHours = 36
/** Nauplii of one harvest stand in a jar of half a litre. */
export const jarMl = 500

/** A hatch cone as it really is, and what was kept cold of its harvests. */
export class Cone {
  readonly temperatureC: number
  #started: { atMs: number; readyMs: number; nauplii: number } | null = null
  #cold: { atMs: number; filled: number; nauplii: number }[] = []
  readonly perGram: number
  readonly #chance: Chance

  constructor(chance: Chance, { temperatureC }: { temperatureC: number }) {
    this.#chance = chance
    this.temperatureC = temperatureC
    this.perGram = chance.between(naupliiPerGram.from, naupliiPerGram.to)
  }

  get isUnderWay(): boolean {
    return this.#started !== null
  }

  get startedMs(): number | null {
    return this.#started?.atMs ?? null
  }

  start(cystsG: number, atMs: number): void {
    const hours = (hoursAt28 + hoursMorePerC * Math.max(0, 28 - this.temperatureC)) * this.#chance.factor(0.05)
    const nauplii = cystsG * this.perGram * this.#chance.factor(0.05)
    this.#started = { atMs, readyMs: atMs + hours * 3_600_000, nauplii }
  }

  /** What comes out now: all that has hatched, or nothing yet. */
  nauplii(atMs: number): number {
    return this.#started && atMs >= this.#started.readyMs ? this.#started.nauplii : 0
  }

  harvest(atMs: number): void {
    const nauplii = this.nauplii(atMs)
    this.#cold.push({ atMs, filled: nauplii, nauplii })
    this.#started = null
  }

  /** What so much of the newest jar holds; null when nothing was ever harvested here. */
  inJar(ml: number): number | null {
    const newest = this.#cold.at(-1)
    return newest ? (ml * newest.filled) / jarMl : null
  }

  /** As many as are wanted of what still lives in the cold. */
  take(wanted: number, atMs: number): number {
    let left = wanted
    for (const kept of this.#cold) {
      const isAlive = atMs - kept.atMs < coldLifeHours * 3_600_000
      const taken = isAlive ? Math.min(left, kept.nauplii) : 0
      kept.nauplii -= taken
      left -= taken
    }
    return wanted - left
  }
}
