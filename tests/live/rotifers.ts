import type { Chance } from './chance.ts'
import { nInRotiferMg, rotiferNMgPerHour } from './nitrogen.ts'
import type { Water } from './water.ts'

// Nobody here reads the service's sources of these: they are drawn anew for each culture, over what the trade sees.
const growthPerDay = { from: 0.3, to: 0.7 }
const capacityPerMl = { from: 350, to: 900 }
const processSdPerDay = 0.1
const starvingPerDay = -0.2
const fullHours = 16
const hungryHours = 30
// Ciliates, foul air, a bad batch of food: most of it is gone within two days, and it does not mend by itself.
const crashingPerDay = -1.5
// Fecundity falls from 0.7 to 9.8 mg/L NH3: Araujo, Hagiwara & Snell 2001, Hydrobiologia 446/447:363-368.
const ammonia = { from: 0.7, to: 9.8 }
const nPerNh3 = 14.007 / 17.031

/** @property daysToCrash how many days go by between two crashes of one culture, on average; Infinity for never. */
type Started = { water: Water; perMl: number; daysToCrash: number }

/** A rotifer culture as it really is: it grows logistically, by luck too, and only while it is fed. */
export class RotiferCulture {
  readonly water: Water
  perMl: number
  /** What today's harvest held: larvae are fed from that jug. */
  harvestedPerMl: number | null = null
  /** It is dying, and goes on doing so until its vessel is emptied. */
  isSick = false
  readonly growth: number
  readonly capacity: number
  #hoursUnfed = 0
  readonly #chance: Chance
  readonly #daysToCrash: number

  constructor(chance: Chance, { water, perMl, daysToCrash }: Started) {
    this.#chance = chance
    this.#daysToCrash = daysToCrash
    this.water = water
    this.perMl = perMl
    this.growth = chance.between(growthPerDay.from, growthPerDay.to)
    this.capacity = chance.between(capacityPerMl.from, capacityPerMl.to)
  }

  get volumeL(): number {
    return this.water.volumeL
  }

  get animals(): number {
    return this.perMl * this.volumeL * 1000
  }

  /** Eggs a female: many while there is room to grow. */
  get eggRatio(): number {
    if (this.isSick) return 0.02
    return Math.max(0.03, 1.1 * this.growth * (1 - this.perMl / this.capacity))
  }

  feed(): void {
    this.#hoursUnfed = 0
  }

  anHour(): void {
    const fed = this.#hoursUnfed <= fullHours ? 1 : this.#hoursUnfed <= hungryHours ? 0.5 : 0
    if (this.#daysToCrash < Number.POSITIVE_INFINITY && this.#chance.isTrue(1 / (24 * this.#daysToCrash)))
      this.isSick = true
    const perDay = this.isSick
      ? crashingPerDay
      : fed * this.growth * this.#soundness * (1 - this.perMl / this.capacity) + (1 - fed) * starvingPerDay
    // Those of a culture that dies lie in it until it is emptied.
    if (this.isSick) this.water.rots(this.animals * (1 - Math.exp(crashingPerDay / 24)) * nInRotiferMg)
    const luck = (processSdPerDay / Math.sqrt(24)) * this.#chance.normal()
    this.perMl *= Math.exp(perDay / 24 + luck)
    this.#hoursUnfed += 1
    this.water.eaten(this.animals * rotiferNMgPerHour * fed)
    this.water.anHour()
  }

  /** What its ammonia leaves of its growth. */
  get #soundness(): number {
    return 1 - Math.min(1, Math.max(0, (this.#nh3 - ammonia.from) / (ammonia.to - ammonia.from)))
  }

  get #nh3(): number {
    return this.water.poisonMgPerL / nPerNh3
  }

  get isFoul(): boolean {
    return this.#nh3 > ammonia.from
  }

  /** Litres taken out as they are; new water takes their place. */
  takeOut(litres: number): void {
    this.harvestedPerMl = this.perMl
    this.perMl *= Math.max(0, 1 - litres / this.volumeL)
    this.water.change(litres)
  }

  putIn(animals: number): void {
    this.perMl += animals / (this.volumeL * 1000)
  }

  empty(): void {
    this.perMl = 0
    this.isSick = false
    this.water.change(this.volumeL)
  }
}
