import type { Fact, Task } from '@fryward/shared'
import { AlgaeCulture } from './algae.ts'
import { Cone } from './artemia.ts'
import { Breeders, type Eggs } from './breeders.ts'
import type { Chance } from './chance.ts'
import { CopepodCulture } from './copepods.ts'
import type { Fish } from './fish.ts'
import { Juveniles } from './juveniles.ts'
import { Larvae, type Lit } from './larvae.ts'
import { dryShareOfFrozen, excretedOf, nInDryFoodG, nInLarvaMg, pairFeedG, pinchG, uneatenShare } from './nitrogen.ts'
import { RotiferCulture } from './rotifers.ts'
import { Water, type WaterKept } from './water.ts'

const hourMs = 3_600_000
const keptInSieve = 0.9
export const bottleCellsPerMl = 65e9
// Larvae, food and breath keep a small tank under the sea's 8.1-8.2, a fed culture further (common practice).
const tankPH = { from: 7.9, to: 8.2 }
const culturePH = { from: 7.3, to: 7.8 }

/** What is really in a room, hour by hour. The service learns of it only what its keepers count, see and type. */
export class Nature {
  readonly rotifers = new Map<string, RotiferCulture>()
  readonly cones = new Map<string, Cone>()
  readonly copepods = new Map<string, CopepodCulture>()
  readonly algae = new Map<string, AlgaeCulture>()
  readonly batches = new Map<string, Larvae>()
  readonly groups = new Map<string, Juveniles>()
  /** Of tanks. */
  readonly waters = new Map<string, Water>()
  /** Tanks of pairs. */
  readonly homes = new Map<string, string>()
  readonly breeders: Breeders
  readonly chance: Chance
  /** Feeds of Artemia for which too few were there. */
  readonly shortFeeds: { batchId: string; wanted: number; given: number }[] = []
  readonly emptyHarvests: string[] = []
  readonly lostStarts: string[] = []
  /** Cultures that began to die. */
  crashes = 0
  /** Litres that went out for new ones, since it was last asked. */
  changedL = 0
  #nowMs: number
  readonly #daysToCrash: number

  constructor(chance: Chance, given: { nowMs: number; temperatureC: number; light: Lit; daysToCrash: number }) {
    this.chance = chance
    this.#daysToCrash = given.daysToCrash
    this.#nowMs = given.nowMs
    this.breeders = new Breeders(chance, { temperatureC: given.temperatureC, lightsOffHour: given.light.offHour })
  }

  addTank(id: string, kept: Omit<WaterKept, 'pH'>): Water {
    const water = new Water({ ...kept, pH: this.chance.between(tankPH.from, tankPH.to) })
    this.waters.set(id, water)
    return water
  }

  addPair(id: string, { tankId, fish }: { tankId: string; fish: Fish }): void {
    this.homes.set(id, tankId)
    this.breeders.addPair(id, { fish, fromMs: this.#nowMs })
  }

  addRotifers(id: string, { perMl, ...kept }: Omit<WaterKept, 'pH' | 'by'> & { perMl: number }): void {
    const pH = this.chance.between(culturePH.from, culturePH.to)
    const water = new Water({ ...kept, pH, by: 'none' })
    this.rotifers.set(id, new RotiferCulture(this.chance, { water, perMl, daysToCrash: this.#daysToCrash }))
  }

  addCone(id: string, temperatureC: number): void {
    this.cones.set(id, new Cone(this.chance, { temperatureC }))
  }

  addCopepods(id: string, given: ConstructorParameters<typeof CopepodCulture>[1]): void {
    this.copepods.set(id, new CopepodCulture(this.chance, given))
  }

  addAlgae(id: string, given: ConstructorParameters<typeof AlgaeCulture>[1]): void {
    this.algae.set(id, new AlgaeCulture(this.chance, given))
  }

  /** What never hatched of eggs that are all through lies in the tank they hatched in. */
  leaveUnhatched({ eggs, nights }: Eggs, water: Water): void {
    if (nights.some(({ isTaken }) => !isTaken)) return
    const hatched = nights.reduce((sum, { larvae }) => sum + larvae, 0)
    water.rots((eggs - hatched) * nInLarvaMg(0))
  }

  /** Larvae that nobody took in, and the eggs that did not hatch with them, lie with the pair, which eats none of them. */
  leaveLost(eggs: Eggs, nights: Eggs['nights']): void {
    const water = this.waterOf(eggs.pairId)
    if (!water) return
    water.rots(nights.reduce((sum, { larvae }) => sum + larvae, 0) * nInLarvaMg(0))
    this.leaveUnhatched(eggs, water)
  }

  addBatch(id: string, given: ConstructorParameters<typeof Larvae>[1]): void {
    this.batches.set(id, new Larvae(this.chance, given))
  }

  addGroup(id: string, given: ConstructorParameters<typeof Juveniles>[0]): void {
    this.groups.set(id, new Juveniles(given))
  }

  hasLarvae(water: Water): boolean {
    return [...this.batches.values()].some((batch) => batch.water === water)
  }

  /** Where a thing lives, or its own. */
  waterOf(id: string): Water | undefined {
    const inside = this.rotifers.get(id) ?? this.batches.get(id) ?? this.groups.get(id)
    return inside?.water ?? this.waters.get(this.homes.get(id) ?? id)
  }

  get nowMs(): number {
    return this.#nowMs
  }

  until(ms: number): void {
    for (; this.#nowMs + hourMs <= ms; this.#nowMs += hourMs) {
      const hour = new Date(this.#nowMs).getUTCHours()
      for (const culture of this.rotifers.values()) {
        const wasSick = culture.isSick
        culture.anHour()
        if (culture.isSick && !wasSick) this.crashes += 1
      }
      for (const culture of [...this.copepods.values(), ...this.algae.values()]) culture.anHour()
      for (const batch of this.batches.values()) batch.anHour(this.#nowMs, hour)
      for (const group of this.groups.values()) group.anHour()
      for (const water of this.waters.values()) water.anHour()
      this.breeders.anHour(this.#nowMs)
    }
  }

  /** What a keeper's hands did, as it was written down. */
  apply(fact: Fact, task: Task | undefined): void {
    const atMs = Date.parse(fact.at)
    if (fact.kind === 'feeding') this.#feed(fact.subjectId, fact.data, atMs)
    if (fact.kind === 'harvest') this.#harvest(fact.subjectId, fact.data, atMs)
    if (fact.kind === 'care') this.#care(fact.subjectId, fact.data.act, { task, atMs })
    if (fact.kind === 'inoculation') this.#inoculate(fact.subjectId, fact.data, task)
    if (fact.kind === 'outcome') this.groups.get(fact.subjectId)?.leave(fact.data.number)
    if (fact.kind === 'water_change') this.#change(fact.subjectId, { litres: fact.data.removedL, task })
  }

  /** What swims in a tank without a name of its own goes with its water. */
  #change(id: string, { litres, task }: { litres: number; task: Task | undefined }): void {
    const water = this.waterOf(id)
    // The week's change takes the dirt along.
    if (task?.ruleId === 'tank-water-change') water?.siphon()
    const culture = this.rotifers.get(id)
    this.changedL += litres
    this.algae.get(id)?.split(litres)
    this.copepods.get(id)?.change(litres)
    if (culture) culture.takeOut(litres)
    else water?.change(litres)
    for (const batch of this.batches.values()) if (batch.water === water) batch.change(litres)
  }

  #feed(subjectId: string, data: Extract<Fact, { kind: 'feeding' }>['data'], atMs: number): void {
    this.rotifers.get(subjectId)?.feed()
    this.copepods.get(subjectId)?.feed(this.#cellsIn(data))
    const dryShare = data.food === 'frozen' ? dryShareOfFrozen : 1
    const forGroupG = this.groups.has(subjectId) ? (data.amountG ?? 0) * dryShare : 0
    const grams = this.homes.has(subjectId) ? pairFeedG : forGroupG
    this.waterOf(subjectId)?.eaten(excretedOf.dryFoodG(grams * (1 - uneatenShare)))
    this.waterOf(subjectId)?.rots(nInDryFoodG(grams * uneatenShare))
    const batch = this.batches.get(subjectId)
    if (!batch) return
    if (data.food === 'dry' || data.food === 'frozen') {
      const givenG = data.amountG === undefined ? pinchG : data.amountG * dryShare
      batch.water.rots(nInDryFoodG(givenG * (1 - batch.dryShare(atMs))))
    }
    const source = this.rotifers.get(data.fromCultureId ?? '')
    if (data.food === 'rotifers' && source && data.amountMl !== undefined) {
      const animals = data.amountMl * (source.harvestedPerMl ?? source.perMl) * keptInSieve
      batch.rotifersPerMl += animals / (batch.volumeL * 1000)
    }
    const copepods = this.copepods.get(data.fromCultureId ?? '')
    if (data.food === 'copepods' && copepods && data.amountMl !== undefined)
      batch.copepodsPerMl += (data.amountMl * (copepods.harvestedPerMl ?? copepods.nauplii)) / (batch.volumeL * 1000)
    if (data.food === 'artemia' && data.animals !== undefined) {
      const source = this.cones.get(data.fromCultureId ?? '')
      const wanted = data.amountMl === undefined ? data.animals : (source?.inJar(data.amountMl) ?? data.animals)
      let given = source?.take(wanted, atMs) ?? 0
      for (const cone of this.cones.values()) given += cone.take(wanted - given, atMs)
      if (given < 0.7 * wanted) this.shortFeeds.push({ batchId: subjectId, wanted, given })
      batch.artemiaPerMl += given / (batch.volumeL * 1000)
    }
  }

  /** Live algae are measured out of their culture, the rest comes from the bottle. */
  #cellsIn({ food, fromCultureId, amountMl = 0 }: Extract<Fact, { kind: 'feeding' }>['data']): number {
    if (food === 'live_microalgae') return this.algae.get(fromCultureId ?? '')?.draw(amountMl / 1000) ?? 0
    return food === 'concentrate' ? amountMl * bottleCellsPerMl : 0
  }

  #harvest(subjectId: string, data: Extract<Fact, { kind: 'harvest' }>['data'], atMs: number): void {
    const cone = this.cones.get(subjectId)
    if (cone) {
      if (cone.nauplii(atMs) === 0) this.emptyHarvests.push(subjectId)
      cone.harvest(atMs)
    }
    this.copepods.get(subjectId)?.takeNauplii(data.volumeL)
    const culture = this.rotifers.get(subjectId)
    if (!culture) return
    for (const part of data.parts)
      if (part.to === 'culture')
        this.rotifers.get(part.subjectId ?? '')?.putIn(part.volumeL * 1000 * culture.perMl * keptInSieve)
    culture.takeOut(data.volumeL)
  }

  #care(subjectId: string, act: string, { task, atMs }: { task: Task | undefined; atMs: number }): void {
    if (act === 'start_artemia') {
      const cone = this.cones.get(subjectId)
      if (cone?.isUnderWay) this.lostStarts.push(subjectId)
      cone?.start(task?.amount?.unit === 'g' ? task.amount.value : 1, atMs)
    }
    if (act === 'restart_culture') this.copepods.get(subjectId)?.restart(task?.amount?.value ?? 0.5)
    const batch = this.batches.get(subjectId)
    if (act === 'siphon_bottom' && batch) {
      batch.dead = 0
      batch.water.siphon()
    }
    const culture = this.rotifers.get(subjectId)
    if (act !== 'restart_culture' || !culture) return
    // Its own animals go back in where it is only given a clean vessel.
    const keptL = task?.ruleId === 'rotifer-restart' ? (task.amount?.value ?? culture.volumeL / 2) : 0
    const kept = keptL * 1000 * culture.perMl * keptInSieve
    culture.empty()
    culture.putIn(kept)
  }

  /** From another culture they came with its harvest; what is bought in is as many as are said. */
  #inoculate(subjectId: string, data: Extract<Fact, { kind: 'inoculation' }>['data'], task: Task | undefined): void {
    const isBought = task === undefined || task.ruleId === 'rotifer-empty'
    if (data.fromCultureId !== undefined || !isBought) return
    this.rotifers.get(subjectId)?.putIn(data.animals ?? 0)
  }
}
