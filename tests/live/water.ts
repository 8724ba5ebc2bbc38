// Un-ionised share: Bell, Johnson, Jickells & Liss 2007, Environ. Chem. 4:183-186 (from memory); not the formula of the service.
const pKaOf = (temperatureC: number, salinity: number) => 10.0423 - 0.0315536 * temperatureC + 0.003071 * salinity
// Half of what is eaten comes out within six hours of a meal. assumption
const excretedPerHour = 0.11
// A ripe filter leaves nothing that a kit reads (common practice); rock and old walls do little, and those that turn nitrite on lag
// behind those that make it, so that it is what a young tank shows longest (common practice). assumptions, a day
const turnedPerDay = {
  ammonia: { filter: 8, sponge: 2, walls: 0.3, none: 0 },
  nitrite: { filter: 8, sponge: 2, walls: 0.15, none: 0 },
}
// Of nitrogen in what is dead, half is ammonia within two days at 25 C. assumption, after feed and faeces that lose most of theirs
// within a week (from memory)
const rottingPerHour = 1 - 0.5 ** (1 / 48)
// What a hose does not get. assumption
const leftBySiphon = 0.1

export type WaterKept = {
  volumeL: number
  temperatureC: number
  salinity: number
  pH: number
  /** What turns ammonia into nitrate in it. */
  by: keyof typeof turnedPerDay.ammonia
}

/** The water of one vessel: ammonia builds up in it, and leaves with what is changed and through a filter. */
export class Water {
  readonly volumeL: number
  readonly pH: number
  /** Of the total ammonia (as N), what is poisonous. */
  readonly poisonousShare: number
  /** Total ammonia, as N. */
  ammoniaMgPerL = 0
  /** Nitrite, as N. */
  nitriteMgPerL = 0
  /** Nitrogen of what lies dead on the bottom. */
  rottingMg = 0
  /** NH3, as N, at its worst since somebody began to look. */
  worstMgPerL = 0
  #eatenMg = 0
  #by: WaterKept['by']

  constructor({ volumeL, temperatureC, salinity, pH, by }: WaterKept) {
    this.volumeL = volumeL
    this.pH = pH
    this.poisonousShare = 1 / (1 + 10 ** (pKaOf(temperatureC, salinity) - pH))
    this.#by = by
  }

  /** NH3, as N. */
  get poisonMgPerL(): number {
    return this.ammoniaMgPerL * this.poisonousShare
  }

  /** Nitrogen that will come out of whoever ate. */
  eaten(willExcreteMg: number): void {
    this.#eatenMg += willExcreteMg
  }

  /** Nitrogen of what died, or was not eaten. */
  rots(mg: number): void {
    this.rottingMg += mg
  }

  siphon(): void {
    this.rottingMg *= leftBySiphon
  }

  anHour(): void {
    const out = this.#eatenMg * excretedPerHour
    this.#eatenMg -= out
    const rotten = this.rottingMg * rottingPerHour
    this.rottingMg -= rotten
    const turned = this.ammoniaMgPerL * (1 - Math.exp(-turnedPerDay.ammonia[this.#by] / 24))
    this.nitriteMgPerL = this.nitriteMgPerL * Math.exp(-turnedPerDay.nitrite[this.#by] / 24) + turned
    this.ammoniaMgPerL += (out + rotten) / this.volumeL - turned
    this.worstMgPerL = Math.max(this.worstMgPerL, this.poisonMgPerL)
  }

  /** A ripe one, from another tank; a sponge on little air turns a quarter as much. assumption */
  hangFilter(by: 'filter' | 'sponge'): void {
    this.#by = by
  }

  /** Into the tank that it ripened in. */
  takeFilterOut(): void {
    this.#by = 'none'
  }

  /** Of the prey that swims in it, what a sponge draws in within a day. assumption */
  get preyLostPerDay(): number {
    return this.#by === 'sponge' ? 0.15 : 0
  }

  change(litres: number): void {
    const kept = Math.max(0, 1 - litres / this.volumeL)
    this.ammoniaMgPerL *= kept
    this.nitriteMgPerL *= kept
    // A vessel that is emptied is wiped out.
    if (kept === 0) this.rottingMg = 0
  }
}

// Gilthead bream larvae of 12 days, 24 h: 0.24 mg/L NH3, safe to a tenth of it: Parra & Yufera 1999, Aquac. Res. 30 (abstract).
const nPerNh3 = 14.007 / 17.031
const larvae = { safe: 0.024 * nPerNh3, half: 0.24 * nPerNh3, days: 1 }
// A. ocellaris of 1.2 g, 96 h: 0.75 mg/L NH3-N, a tenth of it as the limit: Medeiros 2014, FURG.
const fish = { safe: 0.075, half: 0.75, days: 4 }
const poisoning = { larvae, fish }
// The same fish: 109 mg/L NO2-N in 96 h, a tenth of it as the limit: Medeiros 2014, FURG; sea water protects (chloride). Larvae alike. assumption
const safeNitriteMgPerL = 10.9
export const isNitriteFoul = (mgPerL: number): boolean => mgPerL > safeNitriteMgPerL
// Larval silversides at 25 C, salinity 31 and pH 8: an early life at 0.061 mg/L NH3 lies between no harm and the least that is
// seen: Miller, Poucher, Cardin & Hansen 1990, Arch. Environ. Contam. Toxicol. 19 (abstract). 28 days of it: from memory; a
// fifth of them dead is the least that is seen: assumption.
const lasting = { mgPerL: 0.061 * nPerNh3, days: 28, dead: 0.2 }
const perDay = (dead: number, days: number) => -Math.log(1 - dead) / days
// Doses kill in proportion to a power of them: the one by which both that day and those weeks come true.
const steepness =
  Math.log(perDay(lasting.dead, lasting.days) / perDay(0.5, larvae.days)) / Math.log(lasting.mgPerL / larvae.half)

export const isFoul = (mgPerL: number, who: keyof typeof poisoning): boolean => mgPerL > poisoning[who].safe

/** How fast so much NH3-N kills, a day. */
export function poisonedPerDay(poisonMgPerL: number, who: keyof typeof poisoning): number {
  const { safe, half, days } = poisoning[who]
  return poisonMgPerL <= safe ? 0 : perDay(0.5, days) * (poisonMgPerL / half) ** steepness
}

// The colours of a common drop test's card, total ammonia (common practice).
const card = [0, 0.25, 0.5, 1, 2, 4, 8]

/** What a keeper reads off the card: the colour that is nearest by eye, which goes by ratios. */
export function readOffCard(mgPerL: number): number {
  const seen = (colour: number) => Math.log(colour + 0.1)
  const away = (colour: number) => Math.abs(seen(colour) - seen(mgPerL))
  return card.reduce((best, colour) => (away(colour) < away(best) ? colour : best))
}
