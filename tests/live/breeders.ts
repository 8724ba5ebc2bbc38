import type { Chance } from './chance.ts'
import type { Fish } from './fish.ts'

const dayMs = 86_400_000
const shareLessPerC = 0.075
const scatter = 0.05
const share = { most: 0.7, rest: 0.3 }

/** Eggs as they really are. `clutchId` is null until somebody has written them down. */
export type Eggs = {
  pairId: string
  fish: Fish
  clutchId: string | null
  laidMs: number
  eggs: number
  /** Left with the parents: nobody looks for their larvae. */
  isLeft: boolean
  /** A tank is kept for them. */
  isRaised: boolean
  /** The nights on which larvae come out, and how many. */
  nights: { atMs: number; larvae: number; isTaken: boolean }[]
}

/** Pairs that lay when they are ready, and eggs that hatch in the dark when they are. */
export class Breeders {
  readonly clutches: Eggs[] = []
  readonly #fish = new Map<string, Fish>()
  readonly #nextMs = new Map<string, number>()
  readonly #chance: Chance
  readonly #temperatureC: number
  readonly #lightsOffHour: number

  constructor(chance: Chance, { temperatureC, lightsOffHour }: { temperatureC: number; lightsOffHour: number }) {
    this.#chance = chance
    this.#temperatureC = temperatureC
    this.#lightsOffHour = lightsOffHour
  }

  addPair(id: string, { fish, fromMs }: { fish: Fish; fromMs: number }): void {
    this.#fish.set(id, fish)
    this.#nextMs.set(id, fish.floats ? this.#dusk(fromMs) : this.#afternoon(fromMs, this.#chance.between(0, 3)))
  }

  anHour(atMs: number): void {
    for (const [pairId, nextMs] of this.#nextMs) {
      if (atMs < nextMs) continue
      const fish = this.#fish.get(pairId)!
      if (fish.floats) {
        this.#spawnAtDusk(pairId, { fish, floats: fish.floats, laidMs: nextMs })
        continue
      }
      const laid = this.#lay(pairId, { fish, laidMs: nextMs })
      this.clutches.push(laid)
      const lastNight = laid.nights.at(-1)?.atMs ?? nextMs
      this.#nextMs.set(pairId, this.#afternoon(lastNight, this.#chance.between(...fish.rest)))
    }
  }

  /** Eggs on a pair's nest that nobody has written down and that have not begun to hatch. */
  unseen(pairId: string, atMs: number): Eggs | undefined {
    return this.clutches.find(
      (each) => each.pairId === pairId && each.clutchId === null && atMs < (each.nights[0]?.atMs ?? 0),
    )
  }

  /** On most evenings, whatever became of the eggs of the one before. */
  #spawnAtDusk(pairId: string, given: { fish: Fish; floats: NonNullable<Fish['floats']>; laidMs: number }): void {
    const { fish, floats, laidMs } = given
    this.#nextMs.set(pairId, this.#dusk(laidMs + dayMs / 2))
    if (!this.#chance.isTrue(floats.eveningsShare)) return
    const eggs = Math.round(this.#chance.between(...fish.eggs))
    const atMs = laidMs + this.#chance.between(...floats.hatchHours) * 3_600_000
    const nights = [{ atMs, larvae: eggs * this.#chance.between(0.5, 0.8), isTaken: false }]
    this.clutches.push({ pairId, fish, clutchId: null, isLeft: false, isRaised: false, laidMs, eggs, nights })
  }

  byClutch(clutchId: string): Eggs | undefined {
    return this.clutches.find((each) => each.clutchId === clutchId)
  }

  #lay(pairId: string, { fish, laidMs }: { fish: Fish; laidMs: number }): Eggs {
    const eggs = Math.round(this.#chance.between(...fish.eggs))
    const days = fish.days * (1 - shareLessPerC * (this.#temperatureC - 27)) * this.#chance.factor(scatter)
    const first = this.#nightAfter(laidMs + days * dayMs)
    const larvae = eggs * this.#chance.between(0.6, 0.9)
    const isTwo = this.#chance.isTrue(0.25)
    const nights = isTwo
      ? [
          { atMs: first, larvae: larvae * share.most, isTaken: false },
          { atMs: first + dayMs, larvae: larvae * share.rest, isTaken: false },
        ]
      : [{ atMs: first, larvae, isTaken: false }]
    return { pairId, fish, clutchId: null, isLeft: false, isRaised: false, laidMs, eggs, nights }
  }

  /** An hour after lights off on the first night at or after an instant. */
  #nightAfter(ms: number): number {
    const start = Math.floor(ms / dayMs) * dayMs + (this.#lightsOffHour + 1) * 3_600_000
    return start >= ms ? start : start + dayMs
  }

  /** Within half an hour of lights off. */
  #dusk(fromMs: number): number {
    const offMs = Math.floor(fromMs / dayMs) * dayMs + this.#lightsOffHour * 3_600_000
    return (offMs > fromMs ? offMs : offMs + dayMs) + this.#chance.between(-0.5, 0.5) * 3_600_000
  }

  #afternoon(fromMs: number, days: number): number {
    return Math.floor((fromMs + days * dayMs) / dayMs) * dayMs + this.#chance.between(12, 16) * 3_600_000
  }
}
