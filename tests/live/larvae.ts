import type { Chance } from './chance.ts'
import type { Fish } from './fish.ts'
import { excretedOf, nInLarvaMg, rotiferNMgPerHour } from './nitrogen.ts'
import { poisonedPerDay, type Water } from './water.ts'

// What a larva eats at most in an hour of light, in rotifers; and where it finds half of what it could eat.
const mostPerHour = 250
const halfFedPerMl = 1
const hungryUnderShare = 0.4
const rotifersInOneArtemia = 8
const shareOfArtemia = 0.7
const inTheDark = 0.1
// Through the first night; of larvae of floating eggs their fish says how long. Mouths open half a day before it is used up.
const yolkDays = 0.6
const mouthOpenDays = 0.5

export type Lit = { onHour: number; offHour: number }
type Hatched = { fish: Fish; water: Water; hatchedMs: number; number: number; lit: Lit }

/** A batch as it really is: prey is eaten, and larvae that find none die sooner. */
export class Larvae {
  readonly water: Water
  readonly hatchedMs: number
  number = 0
  rotifersPerMl = 0
  artemiaPerMl = 0
  copepodsPerMl = 0
  /** Lit hours of today in which they found too little, by what they could eat. */
  hungryHours = 0
  /** The same, of the day that has ended. */
  hungryToday = 0
  /** On the bottom since it was last siphoned. */
  dead = 0
  /** All that hatched into it, and of these killed by ammonia. */
  came = 0
  poisoned = 0
  /** Hours of the day between which it is light over them. */
  readonly #lit: Lit
  readonly #fish: Fish
  readonly firstDryDay: number
  readonly settledDay: number

  constructor(chance: Chance, given: Hatched) {
    this.#lit = given.lit
    this.water = given.water
    this.hatchedMs = given.hatchedMs
    this.join(given.number)
    this.#fish = given.fish
    this.firstDryDay = chance.between(...given.fish.firstDryDay)
    this.settledDay = chance.between(...given.fish.settledDay)
  }

  join(number: number): void {
    this.number += number
    this.came += number
  }

  get volumeL(): number {
    return this.water.volumeL
  }

  ageDays(atMs: number): number {
    return (atMs - this.hatchedMs) / 86_400_000
  }

  /** How many of them live on dry food: none at first, all ten days later. */
  dryShare(atMs: number): number {
    return Math.min(1, Math.max(0, (this.ageDays(atMs) - this.firstDryDay) / 10))
  }

  get isOfFloatingEggs(): boolean {
    return this.#fish.floats !== undefined
  }

  get #yolkDays(): number {
    return this.#fish.floats?.yolkDays ?? yolkDays
  }

  /** Whether rotifers are small enough for them by now. */
  takesRotifers(atMs: number): boolean {
    return this.ageDays(atMs) >= (this.#fish.floats?.rotifersFromDay ?? 0)
  }

  eatenPerLarvaPerHour(atMs: number): number {
    const { first, moreADay } = this.#fish.perHour
    if (this.#fish.floats && this.ageDays(atMs) < this.#yolkDays - mouthOpenDays) return 0
    return Math.min(mostPerHour, first + moreADay * Math.max(0, this.ageDays(atMs)))
  }

  anHour(atMs: number, hour: number): void {
    const isLit = hour >= this.#lit.onHour && hour < this.#lit.offHour
    const age = this.ageDays(atMs)
    const takesArtemia = age >= this.#fish.artemiaFromDay
    const artemia = takesArtemia ? this.artemiaPerMl * rotifersInOneArtemia : 0
    const rotifers = this.takesRotifers(atMs) ? this.rotifersPerMl : 0
    const found = rotifers + this.copepodsPerMl + artemia
    const fedShare = Math.max(found / (found + halfFedPerMl), this.dryShare(atMs))
    const wanted = (this.number * this.eatenPerLarvaPerHour(atMs)) / (this.volumeL * 1000)
    const eaten = Math.min(0.8 * found, wanted * (found / (found + halfFedPerMl)) * (isLit ? 1 : inTheDark))
    const ofArtemia = Math.min(artemia, Math.max(eaten * shareOfArtemia, eaten - rotifers - this.copepodsPerMl))
    const ofCopepods = Math.min(this.copepodsPerMl, eaten - ofArtemia)
    this.artemiaPerMl = Math.max(0, this.artemiaPerMl - ofArtemia / rotifersInOneArtemia)
    this.copepodsPerMl -= ofCopepods
    this.#loseToSponge()
    this.rotifersPerMl = Math.max(0, this.rotifersPerMl - (eaten - ofArtemia - ofCopepods))
    const isHungry = isLit && age > this.#yolkDays && fedShare < hungryUnderShare
    if (isHungry) this.hungryHours += 1
    this.#excrete({ wanted: isLit ? wanted : 0, eaten, ofArtemia }, atMs)
    const poison = poisonedPerDay(this.water.poisonMgPerL, 'larvae')
    const perDay = (age < 6 ? 0.04 : 0.012) + (isHungry ? 0.5 : 0) + poison
    const left = this.number * Math.exp(-perDay / 24)
    this.dead += this.number - left
    this.water.rots((this.number - left) * nInLarvaMg(age))
    this.poisoned += ((this.number - left) * poison) / perDay
    this.number = left
  }

  #loseToSponge(): void {
    const kept = Math.exp(-this.water.preyLostPerDay / 24)
    this.rotifersPerMl *= kept
    this.artemiaPerMl *= kept
    this.copepodsPerMl *= kept
  }

  /** Of what was eaten per mL in rotifers; what those that live on dry food did not find of it they took from that. */
  #excrete({ wanted, eaten, ofArtemia }: { wanted: number; eaten: number; ofArtemia: number }, atMs: number): void {
    const ml = this.volumeL * 1000
    const ofDry = Math.max(0, wanted - eaten) * this.dryShare(atMs)
    this.water.eaten(excretedOf.rotifers((eaten - ofArtemia + ofDry) * ml))
    this.water.eaten(excretedOf.nauplii((ofArtemia / rotifersInOneArtemia) * ml))
    this.water.eaten(this.rotifersPerMl * ml * rotiferNMgPerHour)
  }

  /** Part of the water goes, and the prey in it, and the dead. */
  change(litres: number): void {
    this.dead = 0
    const kept = Math.max(0, 1 - litres / this.volumeL)
    this.rotifersPerMl *= kept
    this.artemiaPerMl *= kept
    this.copepodsPerMl *= kept
  }
}
