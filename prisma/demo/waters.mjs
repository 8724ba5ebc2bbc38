// What is really in the demo room's vessels, hour by hour, while its caretakers count and feed. All of it is invented:
// rates are plausible for the trade and cite nothing, because nothing outside the demo rests on them.

const hourMs = 3_600_000
const dayMs = 24 * hourMs

const naupliiPerGram = 160_000
export const jarMl = 600

const isCrashing = ({ crashAtMs }, atMs) => crashAtMs !== undefined && atMs >= crashAtMs

/** Live food that grows towards what its vessel carries, is thinned, and now and then dies. */
export class Waters {
  #random
  #cultures
  #batches
  #cones

  /** @param {object} random where luck comes from. @param {object} [state] of other waters, to go on from. */
  constructor(random, { cultures = [], batches = [], cones = [] } = {}) {
    this.#random = random
    this.#cultures = new Map(cultures.map(([id, culture]) => [id, { ...culture }]))
    this.#batches = new Map(batches.map(([id, batch]) => [id, { ...batch }]))
    this.#cones = new Map(cones)
  }

  /** All there is to know of them, fit for JSON. */
  state() {
    return { cultures: [...this.#cultures], batches: [...this.#batches], cones: [...this.#cones] }
  }

  addCulture(id, { volumeL, densityPerMl, growthPerDay, capacityPerMl, atMs }) {
    this.#cultures.set(id, {
      volumeL,
      densityPerMl,
      growthPerDay,
      capacityPerMl,
      atMs,
    })
  }

  crash(id, atMs) {
    this.#cultures.get(id).crashAtMs = atMs
  }

  cultureAt(id, atMs) {
    const culture = this.#cultures.get(id)
    for (; culture.atMs + hourMs <= atMs; culture.atMs += hourMs) {
      const room = 1 - culture.densityPerMl / culture.capacityPerMl
      const growth = isCrashing(culture, culture.atMs) ? -2.2 : culture.growthPerDay * room
      const luck = 0.12 * this.#random.normal() * Math.sqrt(hourMs / dayMs)
      culture.densityPerMl *= Math.exp((growth * hourMs) / dayMs + luck)
    }
    return culture
  }

  thin(id, litres, atMs) {
    const culture = this.cultureAt(id, atMs)
    culture.densityPerMl *= Math.max(0.01, 1 - litres / culture.volumeL)
  }

  /** Eggs per female: high while there is room to grow, low when crowded or dying. */
  eggRatio(id, atMs) {
    const culture = this.cultureAt(id, atMs)
    if (isCrashing(culture, atMs + dayMs)) return 0.08
    return Math.max(0.12, 0.7 - (0.5 * culture.densityPerMl) / culture.capacityPerMl + 0.08 * this.#random.normal())
  }

  addBatch(id, { larvae, volumeL, hatchedMs, atMs }) {
    this.#batches.set(id, { larvae, volumeL, hatchedMs, atMs, preyPerMl: 0 })
  }

  /** Prey that is left, and larvae: most losses come in the first five days. */
  batchAt(id, atMs) {
    const batch = this.#batches.get(id)
    for (; batch.atMs + hourMs <= atMs; batch.atMs += hourMs) {
      const ageDays = (batch.atMs - batch.hatchedMs) / dayMs
      const lossPerDay = ageDays < 5 ? 0.06 : ageDays < 12 ? 0.02 : 0.006
      batch.larvae *= Math.exp((-lossPerDay * hourMs) / dayMs)
      const eatenPerHour = (batch.larvae * (25 + 12 * Math.min(ageDays, 10))) / (batch.volumeL * 1000)
      batch.preyPerMl = Math.max(0, batch.preyPerMl - eatenPerHour)
    }
    return batch
  }

  feed(id, addedPerMl, atMs) {
    this.batchAt(id, atMs).preyPerMl += addedPerMl
  }

  startCone(id, cystsG) {
    this.#cones.set(id, cystsG)
  }

  /** Nauplii per mL of the jar that what was last started in a cone fills; undefined before anything was. */
  jarPerMl(id) {
    const cystsG = this.#cones.get(id)
    return cystsG === undefined ? undefined : (cystsG * naupliiPerGram) / jarMl
  }

  hasCulture(id) {
    return this.#cultures.has(id)
  }

  hasBatch(id) {
    return this.#batches.has(id)
  }

  /** How many animals a dropper of that volume holds: scatter as chance has it. */
  sample(meanCount) {
    if (meanCount > 60) return Math.max(0, Math.round(meanCount + this.#random.normal() * Math.sqrt(meanCount)))
    const limit = Math.exp(-meanCount)
    let count = 0
    for (let product = this.#random.uniform(); product > limit; product *= this.#random.uniform()) count += 1
    return count
  }
}
