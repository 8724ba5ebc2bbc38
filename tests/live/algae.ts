import type { Chance } from './chance.ts'

// Small flagellates in bottles double in a day or two and come to some ten million a mL (from memory).
const growthPerDay = { from: 0.4, to: 0.8 }
const capacityPerMl = { from: 6e6, to: 12e6 }
/** Cells per mL under which a culture looks pale, and clear. assumption */
const looks = { pale: 2e6, clear: 3e5 }

/** A culture of live algae as it really is: what is drawn is missing until it is filled up. */
export class AlgaeCulture {
  readonly volumeL: number
  cellsPerMl: number
  /** What is in it. */
  litres: number
  readonly #growth: number
  readonly #capacity: number

  constructor(chance: Chance, { volumeL }: { volumeL: number }) {
    this.volumeL = volumeL
    this.litres = volumeL
    this.cellsPerMl = chance.between(2e6, 4e6)
    this.#growth = chance.between(growthPerDay.from, growthPerDay.to)
    this.#capacity = chance.between(capacityPerMl.from, capacityPerMl.to)
  }

  get look(): 'water_clear' | 'water_tinted' | 'water_green' {
    if (this.cellsPerMl < looks.clear) return 'water_clear'
    return this.cellsPerMl < looks.pale ? 'water_tinted' : 'water_green'
  }

  anHour(): void {
    this.cellsPerMl *= Math.exp((this.#growth * (1 - this.cellsPerMl / this.#capacity)) / 24)
  }

  /** Cells in so many litres of it, or in what is left. */
  draw(litres: number): number {
    const drawn = Math.min(litres, this.litres)
    this.litres -= drawn
    return drawn * 1000 * this.cellsPerMl
  }

  split(litres: number): void {
    const left = Math.max(0, this.litres - litres)
    this.cellsPerMl *= left / this.volumeL
    this.litres = this.volumeL
  }
}
