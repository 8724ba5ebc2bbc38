import { assertInRange } from './check-input.ts'
import { growthFromLifeTable, ROTIFER_LIFE_TABLE } from './life-table.ts'

export type GrowthPrior = {
  /** Net growth per day of a thin, well fed clone. */
  growthPerDay: number
  /** What a vessel fed by hand is expected to do: half-way, on a logarithmic scale, to a batch on dry diet. */
  keptGrowthPerDay: number
  /** Standard deviation of the logarithm of either. */
  logSd: number
  isExtrapolated: boolean
  /** False when the temperature is outside the strain's best range; null without a strain or a temperature. */
  isAtBestTemperature: boolean | null
  sources: string[]
}

/**
 * Growth per day of a B. plicatilis clone against salinity: under 0.30 from 35 up, 0.40-0.50 at 2 and 30, 0.50-0.85
 * at 4-20 (Lubzens, Minkoff & Marom 1985, Mar. Biol. 85:123-126); middles of the bands.
 */
const GROWTH_BY_SALINITY = [
  { salinity: 2, growthPerDay: 0.45 },
  { salinity: 4, growthPerDay: 0.675 },
  { salinity: 20, growthPerDay: 0.675 },
  { salinity: 30, growthPerDay: 0.45 },
  { salinity: 35, growthPerDay: 0.28 },
] as const

/** Batch on dry diet, 25 C, salinity 25: 200-250 to 600 per mL, doubling every 2 days (FAO 361, sect. 3.5; from memory). */
const DRY_DIET_GROWTH_PER_DAY = Math.LN2 / 2

/** B. calyciflorus, fresh water: at most 1.02 a day less deaths of 0.083-0.383 (Rothhaupt 1990, Freshw. Biol. 23:561-570). */
const FRESHWATER_GROWTH_PER_DAY = 0.8

export type RotiferStrain = 'L' | 'S' | 'SS'

/** Best growth, C: L 18-25, S 28-35 (FAO 361, sect. 3.4, Lavens & Sorgeloos 1996); SS taken with S, common practice. */
const BEST_TEMPERATURE_C = { L: { min: 18, max: 25 }, S: { min: 28, max: 35 }, SS: { min: 28, max: 35 } }

/**
 * Spread: 0.25 to 1.8 a day at salinity 20 in two standard deviations, as clones and foods differ: under 0.30 to 0.85
 * (Lubzens et al. 1985), 0.61-0.79 (Hotos 2003), 1.96 at the most (Cabrera 2008); common practice.
 */
const LOG_SD = 0.5
/** Wider where a condition is not known, or the strain is away from its best temperature; common practice. */
const UNKNOWN_WIDENS = 1.25

/** Salinity tolerated: 1-97 (FAO Fish. Tech. Pap. 361, sect. 3.5; from memory). */
export const SALINITY_RANGE = { min: 0, max: 97 }
const TEMPERATURE_RANGE = { min: 5, max: 35, unit: 'C' }

function interpolate(points: readonly { x: number; y: number }[], x: number): number {
  let from = points[0]!
  if (x <= from.x) return from.y
  for (const to of points.slice(1)) {
    if (x <= to.x) return from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x)
    from = to
  }
  return from.y
}

function growthAtSalinity(salinity: number): number {
  if (salinity < 1) return FRESHWATER_GROWTH_PER_DAY
  const atMost35 = interpolate(
    GROWTH_BY_SALINITY.map((row) => ({ x: row.salinity, y: row.growthPerDay })),
    salinity,
  )
  // Halves for each further 10 (Lubzens and co-workers, 1980s).
  return salinity > 35 ? atMost35 * 0.5 ** ((salinity - 35) / 10) : atMost35
}

/** Growth relative to 25 C by the life table of FAO 361, Table 3.1; held level above 25 C, where strains part. */
function temperatureFactor(temperatureC: number): number {
  const points = ROTIFER_LIFE_TABLE.map((table) => ({
    x: table.temperatureC,
    y: growthFromLifeTable(table),
  }))
  const warmest = interpolate(points, 25)
  // Below 15 C the slope of 15-20 C is carried on, and flagged.
  if (temperatureC < 15) {
    const ratio = interpolate(points, 15) / interpolate(points, 20)
    return (interpolate(points, 15) * ratio ** ((15 - temperatureC) / 5)) / warmest
  }
  return interpolate(points, temperatureC) / warmest
}

/**
 * What is known of a rotifer culture's growth before it has been counted: by salinity (Lubzens et al. 1985) times the
 * effect of temperature (FAO 361, Table 3.1). Without a salinity it is taken as 4-20, without a temperature as 25 C.
 * @throws ArgumentError when temperatureC is outside 5 to 35 C or salinity outside 0 to 97.
 */
export function growthPrior({
  temperatureC,
  salinity,
  strain,
}: {
  temperatureC?: number
  salinity?: number
  strain?: RotiferStrain
}): GrowthPrior {
  if (temperatureC !== undefined) assertInRange('temperatureC', temperatureC, TEMPERATURE_RANGE)
  if (salinity !== undefined) assertInRange('salinity', salinity, SALINITY_RANGE)
  const byTemperature = temperatureC === undefined ? 1 : temperatureFactor(temperatureC)
  const best = strain === undefined ? undefined : BEST_TEMPERATURE_C[strain]
  const isKnown = best !== undefined && temperatureC !== undefined
  const isAtBestTemperature = isKnown ? temperatureC >= best.min && temperatureC <= best.max : null
  const isDoubtful = temperatureC === undefined || salinity === undefined || isAtBestTemperature === false
  const growthPerDay = growthAtSalinity(salinity ?? 15) * byTemperature
  return {
    isAtBestTemperature,
    growthPerDay,
    keptGrowthPerDay: Math.sqrt(growthPerDay * DRY_DIET_GROWTH_PER_DAY * byTemperature),
    logSd: isDoubtful ? LOG_SD * UNKNOWN_WIDENS : LOG_SD,
    isExtrapolated: (temperatureC ?? 25) < 15 || (temperatureC ?? 25) > 30 || (salinity ?? 15) > 35,
    sources: [
      salinity !== undefined && salinity < 1
        ? 'Rothhaupt 1990, Freshw. Biol. 23:561-570'
        : 'Lubzens, Minkoff & Marom 1985, Mar. Biol. 85:123-126',
      'FAO Fish. Tech. Pap. 361, Table 3.1 (Lavens & Sorgeloos 1996); from memory',
      'spread: common practice',
    ],
  }
}
