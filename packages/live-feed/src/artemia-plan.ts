import { ArgumentError } from '@fryward/survival'
import { assertInRange, assertPositive } from './check-input.ts'

const HOUR_MS = 3_600_000

/** Yield of good cysts is 200,000-300,000 nauplii per g: Treece 2000, SRAC Publication 702. */
export const DEFAULT_NAUPLII_PER_GRAM = 200_000

/**
 * Hours to hatch: about 24 at 28 C, 30-36 at 20-24 C, all on one line of 1.5 h per C; general literature, from memory; strains
 * and lots differ.
 */
const HATCH_HOURS = { cold: { temperatureC: 20, hours: 36 }, warm: { temperatureC: 28, hours: 24 } }

/** 25-28 C is best, metabolism stops for good above 33 C: Lavens, Thongrod & Sorgeloos 2000, ch. 6 (Blackwell). */
export const CYSTS_STOP_ABOVE_C = 33
const TEMPERATURE_RANGE = { min: 15, max: CYSTS_STOP_ABOVE_C, unit: 'C' }

/** Moult to instar II, when enrichment can start, h after hatching: Lavens & Sorgeloos 1996, FAO 361, sect. 4.1. */
const HOURS_TO_INSTAR_II = 8

/** Cysts per litre: up to 5 g under 20 L, 2 g in larger vessels: Lavens, Thongrod & Sorgeloos 2000, ch. 6. */
const LOADING = { smallVesselL: 20, smallGPerL: 5, largeGPerL: 2 }

/** Nauplii per mL while enriching, 100 of 100-300, and 0.3 g/L of emulsion every 12 h: FAO 361, sect. 4.3.4; from memory. */
const ENRICHMENT = { naupliiPerMl: 100, emulsionGPerL: 0.3, everyHours: 12 }

/** Under 10 C, up to 8 million per L, up to 24 h: Ghent Univ. shrimp nutrition course, Artemia cold storage. */
export const COLD_STORE = { belowC: 10, naupliiPerL: 8_000_000, longestHours: 24 } as const

/**
 * Hours from wetting the cysts to hatched nauplii: 36 / 30 / 24 at 20 / 24 / 28 C, straight between; 24 above 28 C.
 * Below 20 C the same slope is carried on and flagged.
 * @throws ArgumentError when temperatureC is outside 15 to 33 C.
 */
export function artemiaHatchHours({ temperatureC }: { temperatureC: number }): {
  hours: number
  isExtrapolated: boolean
} {
  assertInRange('temperatureC', temperatureC, TEMPERATURE_RANGE)
  const { cold, warm } = HATCH_HOURS
  const perC = (cold.hours - warm.hours) / (warm.temperatureC - cold.temperatureC)
  const hours = warm.hours + perC * Math.max(0, warm.temperatureC - temperatureC)
  return { hours, isExtrapolated: temperatureC < cold.temperatureC || temperatureC > warm.temperatureC + 2 }
}

/** An instant: ISO 8601 with its zone (`2026-03-05T08:00:00Z`), milliseconds since 1970, or a Date. */
export type InstantInput = string | number | Date

function toEpochMs(argument: string, instant: InstantInput): number {
  const hasZone = typeof instant !== 'string' || /(?:Z|[+-]\d\d:?\d\d)$/i.test(instant)
  const epochMs = new Date(instant).getTime()
  // 8.64e15 ms is as far as a date reaches; a month of room is left for the hours taken off.
  if (hasZone && Number.isFinite(epochMs) && Math.abs(epochMs) <= 8.64e15 - 31 * 24 * HOUR_MS) return epochMs
  throw new ArgumentError({
    argument,
    value: instant,
    allowed: 'an ISO 8601 instant with its zone, or milliseconds since 1970',
  })
}

const toInstant = (epochMs: number) => new Date(epochMs).toISOString()

export type HatchPlanInput = {
  neededAt: InstantInput
  nauplii: number
  temperatureC: number
  /** Hatching efficiency of the lot, nauplii per g of cysts (see `hatchingTest`); 200,000 unless given. */
  naupliiPerGram?: number
  /** 0 feeds instar I straight away; 12 or 24 are the published enrichments. */
  enrichHours?: number
  /** The hatching vessel to be used; left out, the smallest that holds the cysts is given. */
  vesselL?: number
  /** Hours set aside to settle, sieve and rinse; 0 unless given. */
  handlingHours?: number
}

export type HatchPlanNote =
  | 'slower-than-published-range'
  | 'warmer-than-best'
  | 'enrichment-not-12-or-24-hours'
  | 'too-large-for-first-artemia'
  | 'several-vessels'

export type HatchPlan = {
  /** Cysts into water, ISO 8601 UTC. */
  startAt: string
  /** Hatched: settle, sieve, rinse. */
  harvestAt: string
  /** Instar II, enrichment starts; null without enrichment. */
  enrichAt: string | null
  neededAt: string
  hatchHours: number
  cystsG: number
  /** Water for each vessel, L: as given, or the least that holds the cysts at their loading. */
  vesselL: number
  vessels: number
  enrichmentVesselL: number | null
  emulsionG: number | null
  notes: HatchPlanNote[]
}

function leastVesselL(cystsG: number): number {
  const small = cystsG / LOADING.smallGPerL
  return small < LOADING.smallVesselL ? small : cystsG / LOADING.largeGPerL
}

function cystsHeldG(vesselL: number): number {
  return vesselL * (vesselL < LOADING.smallVesselL ? LOADING.smallGPerL : LOADING.largeGPerL)
}

function enrichmentFor(nauplii: number, enrichHours: number) {
  if (enrichHours === 0) return { enrichmentVesselL: null, emulsionG: null }
  const enrichmentVesselL = nauplii / 1000 / ENRICHMENT.naupliiPerMl
  const doses = Math.ceil(enrichHours / ENRICHMENT.everyHours)
  return { enrichmentVesselL, emulsionG: enrichmentVesselL * ENRICHMENT.emulsionGPerL * doses }
}

/**
 * When to start Artemia cysts, and how many, so that the nauplii are ready at an hour: counted back from `neededAt`
 * through enrichment, the moult to instar II (8 h) and hatching (24 h at 28 C, longer when cooler).
 * Cysts (g) = nauplii / nauplii per g of the lot.
 * @throws ArgumentError when neededAt is no instant, or a number is outside what its argument allows.
 */
export function artemiaHatchPlan(input: HatchPlanInput): HatchPlan {
  const { nauplii, temperatureC, naupliiPerGram = DEFAULT_NAUPLII_PER_GRAM, enrichHours = 0, handlingHours = 0 } = input
  const neededAtMs = toEpochMs('neededAt', input.neededAt)
  assertPositive('nauplii', nauplii, 'nauplii')
  assertPositive('naupliiPerGram', naupliiPerGram, 'nauplii per g')
  assertInRange('enrichHours', enrichHours, { min: 0, max: 48, unit: 'hours' })
  assertInRange('handlingHours', handlingHours, { min: 0, max: 12, unit: 'hours' })
  if (input.vesselL !== undefined) assertPositive('vesselL', input.vesselL, 'L')
  const { hours: hatchHours } = artemiaHatchHours({ temperatureC })

  const cystsG = nauplii / naupliiPerGram
  const enrichAtMs = neededAtMs - enrichHours * HOUR_MS
  const harvestAtMs = enrichAtMs - ((enrichHours > 0 ? HOURS_TO_INSTAR_II : 0) + handlingHours) * HOUR_MS
  const vesselL = input.vesselL ?? leastVesselL(cystsG)
  const vessels = Math.ceil(Number((cystsG / cystsHeldG(vesselL)).toPrecision(12)))
  const notes: HatchPlanNote[] = []
  if (temperatureC < HATCH_HOURS.cold.temperatureC) notes.push('slower-than-published-range')
  if (temperatureC > 30) notes.push('warmer-than-best')
  if (enrichHours > 0 && enrichHours !== 12 && enrichHours !== 24) notes.push('enrichment-not-12-or-24-hours')
  // About 870 um at 24 h: Lavens, Thongrod & Sorgeloos 2000, ch. 6; too much for larvae of five days.
  if (enrichHours >= 24) notes.push('too-large-for-first-artemia')
  if (vessels > 1) notes.push('several-vessels')
  return {
    startAt: toInstant(harvestAtMs - hatchHours * HOUR_MS),
    harvestAt: toInstant(harvestAtMs),
    enrichAt: enrichHours > 0 ? toInstant(enrichAtMs) : null,
    neededAt: toInstant(neededAtMs),
    hatchHours,
    cystsG,
    vesselL,
    vessels,
    ...enrichmentFor(nauplii, enrichHours),
    notes,
  }
}
