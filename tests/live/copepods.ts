import type { Chance } from './chance.ts'

// Calanoids of warm water (Parvocalanus, Bestiolina) pass two weeks from egg to egg bearing female at most: nauplii for three
// days, copepodites for four, from memory. Deaths a day are assumptions by which a culture left alone comes to 5-8 grown a mL.
const naupliusDays = 3
const copepoditeDays = 4
const deadPerDay = { nauplius: 0.1, copepodite: 0.05, adult: 0.15 }
/** Nauplii are eaten by the grown ones. assumption */
const eatenPerGrown = 0.1
// 26 eggs a female and day at 0.25 grown per mL, under 1 at 8: Kline & Laidley 2015, Aquaculture (abstract); in between by a curve.
const eggs = { most: 28.9, fewerPerGrown: 0.42 }
const females = 0.5
// Cells that one eats in a day with plenty, small flagellates: tens of thousands by an adult (from memory), the young by size.
const cellsPerDay = { nauplius: 3000, copepodite: 10_000, adult: 25_000 }
const halfFedCells = 20_000
const settledShareADay = 0.2
const starvingPerDay = 0.3
const keptInSieve = 0.9
/** Of the algae left before a feed, cells per mL. assumption */
const looks = { clear: 8_000, green: 60_000 }

/** A copepod culture as it really is: nauplii grow up slowly, females lay less the more there are, and all of them eat. */
export class CopepodCulture {
  readonly volumeL: number
  nauplii: number
  copepodites: number
  adults: number
  foodCellsPerMl = 0
  /** What today's sieving held. */
  harvestedPerMl: number | null = null
  readonly #vigour: number
  readonly #chance: Chance

  constructor(chance: Chance, { volumeL, adultsPerMl }: { volumeL: number; adultsPerMl: number }) {
    this.#chance = chance
    this.volumeL = volumeL
    this.adults = adultsPerMl
    this.copepodites = adultsPerMl
    this.nauplii = 2 * adultsPerMl
    this.#vigour = chance.between(0.6, 1.1)
  }

  /** As they are counted: the sieve holds both. */
  get grown(): number {
    return this.adults + this.copepodites
  }

  get look(): 'water_clear' | 'water_tinted' | 'water_green' {
    if (this.foodCellsPerMl < looks.clear) return 'water_clear'
    return this.foodCellsPerMl > looks.green ? 'water_green' : 'water_tinted'
  }

  feed(cells: number): void {
    this.foodCellsPerMl += cells / (this.volumeL * 1000)
  }

  anHour(): void {
    const fed = this.foodCellsPerMl / (this.foodCellsPerMl + halfFedCells)
    const mouths = cellsPerDay.nauplius * this.nauplii + cellsPerDay.copepodite * this.copepodites
    const eaten = ((mouths + cellsPerDay.adult * this.adults) * fed) / 24
    this.foodCellsPerMl = Math.max(0, this.foodCellsPerMl * (1 - settledShareADay / 24) - eaten)
    const laid = females * this.adults * eggs.most * Math.exp(-eggs.fewerPerGrown * this.grown) * this.#vigour * fed
    const starving = starvingPerDay * (1 - fed)
    const luck = 1 + 0.05 * this.#chance.normal()
    const up = { nauplii: (this.nauplii / naupliusDays) * fed, copepodites: (this.copepodites / copepoditeDays) * fed }
    const dead = (number: number, perDay: number) => number * (perDay + starving)
    const naupliiDead = dead(this.nauplii, deadPerDay.nauplius + eatenPerGrown * this.grown)
    this.nauplii = Math.max(0, this.nauplii + (laid * luck - up.nauplii - naupliiDead) / 24)
    this.copepodites += (up.nauplii - up.copepodites - dead(this.copepodites, deadPerDay.copepodite)) / 24
    this.adults += (up.copepodites - dead(this.adults, deadPerDay.adult)) / 24
  }

  /** Litres through both sieves: the nauplii are gone with what passed, the grown ones go back. */
  takeNauplii(litres: number): void {
    this.harvestedPerMl = this.nauplii * keptInSieve
    this.nauplii *= Math.max(0, 1 - litres / this.volumeL)
    this.foodCellsPerMl *= Math.max(0, 1 - litres / this.volumeL)
  }

  /** New water under those that the sieve gave back. */
  change(litres: number): void {
    this.foodCellsPerMl *= Math.max(0, 1 - litres / this.volumeL)
  }

  restart(keptShare: number): void {
    for (const stage of ['nauplii', 'copepodites', 'adults'] as const) this[stage] *= keptShare * keptInSieve
    this.foodCellsPerMl = 0
  }
}
