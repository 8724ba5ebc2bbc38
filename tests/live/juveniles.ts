import { poisonedPerDay, type Water } from './water.ts'

/** A group that was moved to grow-out: it is fed, counted and sold, and suffers in bad water. */
export class Juveniles {
  readonly water: Water
  readonly came: number
  number: number
  poisoned = 0

  constructor({ water, number }: { water: Water; number: number }) {
    this.water = water
    this.number = number
    this.came = number
  }

  anHour(): void {
    const left = this.number * Math.exp(-poisonedPerDay(this.water.poisonMgPerL, 'fish') / 24)
    this.poisoned += this.number - left
    this.number = left
  }

  leave(number: number): void {
    this.number = Math.max(0, this.number - number)
  }
}
