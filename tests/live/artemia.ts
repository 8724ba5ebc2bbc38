import type { Chance } from './chance.ts'

const naupliiPerGram = 230_000
const hoursAt28 = 24
const hoursMorePerC = 2.2
const coldLifeHours = 36

/** A hatch cone as it really is, and what was kept cold of its harvests. */
export class Cone {
  readonly temperatureC: number
  #started: { atMs: number; readyMs: number; nauplii: number } | null = null
  #cold: { atMs: number; nauplii: number }[] = []
  readonly #chance: Chance

  constructor(chance: Chance, { temperatureC }: { temperatureC: number }) {
    this.#chance = chance
    this.temperatureC = temperatureC
  }

  get isUnderWay(): boolean {
    return this.#started !== null
  }

  get startedMs(): number | null {
    return this.#started?.atMs ?? null
  }

  start(cystsG: number, atMs: number): void {
    const hours = (hoursAt28 + hoursMorePerC * Math.max(0, 28 - this.temperatureC)) * this.#chance.factor(0.05)
    const nauplii = cystsG * naupliiPerGram * this.#chance.between(0.6, 0.9)
    this.#started = { atMs, readyMs: atMs + hours * 3_600_000, nauplii }
  }

  /** What comes out now: all that has hatched, or nothing yet. */
  nauplii(atMs: number): number {
    return this.#started && atMs >= this.#started.readyMs ? this.#started.nauplii : 0
  }

  harvest(atMs: number): void {
    this.#cold.push({ atMs, nauplii: this.nauplii(atMs) })
    this.#started = null
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
