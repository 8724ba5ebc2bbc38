import type { Chance } from './chance.ts'

// What a larva eats in an hour of light, in rotifers, by its age; and where it finds half of what it could eat.
const firstPerHour = 25
const morePerHourADay = 15
const mostPerHour = 250
const halfFedPerMl = 1
const hungryUnderShare = 0.4
const artemiaFromDay = 5
const rotifersInOneArtemia = 8
const shareOfArtemia = 0.7
const inTheDark = 0.1

export type Lit = { onHour: number; offHour: number }

/** A batch as it really is: prey is eaten, and larvae that find none die sooner. */
export class Larvae {
  readonly volumeL: number
  readonly hatchedMs: number
  number: number
  rotifersPerMl = 0
  artemiaPerMl = 0
  /** Lit hours of today in which they found too little, by what they could eat. */
  hungryHours = 0
  /** The same, of the day that has ended. */
  hungryToday = 0
  /** On the bottom since it was last siphoned. */
  dead = 0
  /** Hours of the day between which it is light over them. */
  readonly #lit: Lit
  readonly firstDryDay: number
  readonly settledDay: number

  constructor(chance: Chance, given: { volumeL: number; hatchedMs: number; number: number; lit: Lit }) {
    this.#lit = given.lit
    this.volumeL = given.volumeL
    this.hatchedMs = given.hatchedMs
    this.number = given.number
    this.firstDryDay = chance.between(9, 13)
    this.settledDay = chance.between(10, 15)
  }

  ageDays(atMs: number): number {
    return (atMs - this.hatchedMs) / 86_400_000
  }

  /** How many of them live on dry food: none at first, all ten days later. */
  dryShare(atMs: number): number {
    return Math.min(1, Math.max(0, (this.ageDays(atMs) - this.firstDryDay) / 10))
  }

  eatenPerLarvaPerHour(atMs: number): number {
    return Math.min(mostPerHour, firstPerHour + morePerHourADay * Math.max(0, this.ageDays(atMs)))
  }

  anHour(atMs: number, hour: number): void {
    const isLit = hour >= this.#lit.onHour && hour < this.#lit.offHour
    const age = this.ageDays(atMs)
    const takesArtemia = age >= artemiaFromDay
    const artemia = takesArtemia ? this.artemiaPerMl * rotifersInOneArtemia : 0
    const found = this.rotifersPerMl + artemia
    const fedShare = Math.max(found / (found + halfFedPerMl), this.dryShare(atMs))
    const wanted = (this.number * this.eatenPerLarvaPerHour(atMs)) / (this.volumeL * 1000)
    const eaten = Math.min(0.8 * found, wanted * (found / (found + halfFedPerMl)) * (isLit ? 1 : inTheDark))
    const ofArtemia = Math.min(artemia, Math.max(eaten * shareOfArtemia, eaten - this.rotifersPerMl))
    this.artemiaPerMl = Math.max(0, this.artemiaPerMl - ofArtemia / rotifersInOneArtemia)
    this.rotifersPerMl = Math.max(0, this.rotifersPerMl - (eaten - ofArtemia))
    // The yolk lasts through the first night.
    const isHungry = isLit && age > 0.6 && fedShare < hungryUnderShare
    if (isHungry) this.hungryHours += 1
    const perDay = (age < 6 ? 0.04 : 0.012) + (isHungry ? 0.5 : 0)
    const left = this.number * Math.exp(-perDay / 24)
    this.dead += this.number - left
    this.number = left
  }

  /** Part of the water goes, and the prey in it, and the dead. */
  change(litres: number): void {
    this.dead = 0
    const kept = Math.max(0, 1 - litres / this.volumeL)
    this.rotifersPerMl *= kept
    this.artemiaPerMl *= kept
  }
}
