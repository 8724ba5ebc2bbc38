import { poissonInterval } from '@fryward/survival'
import { assertInRange } from './check-input.ts'

/**
 * Eggs per female: under 0.13 the culture is already falling, to 0.5 stationary, 0.5-1.2 in full growth.
 * Snell, Childress, Boyer & Hoff 1987, J. World Aquac. Soc. 18:270-277. The ratio lags the cause by 18-24 h.
 */
export const EGG_RATIO_BANDS = { declining: 0.13, growing: 0.5 } as const

/**
 * Females to look at before few eggs are an alarm: at the stationary 0.13, ten show none one time in four, fifty one in
 * 600 (Poisson); common practice.
 */
export const FEMALES_NEEDED = 50

/** FAO Fish. Tech. Pap. 361, sect. 3.5 (Lavens & Sorgeloos 1996); from memory. */
export const CULTURE_WATER_LIMITS = {
  nh3MgL: 1,
  oxygenMgL: 2,
  pHSurvival: 6.6,
  pHBest: 7.5,
} as const

/** NH3 from which fecundity and life span fall with dose, mg/L: Araujo, Hagiwara & Snell 2001, Hydrobiologia 446/447:363-368. */
const NH3_WATCH_MG_L = 0.7

/** Signs a caretaker sees on the day itself; slow swimming shows within 10 minutes of trouble (Snell et al. 1987). */
export type CultureSign = 'swimming-slow' | 'smell' | 'foam' | 'sinking' | 'ciliates' | 'clear-water'

export type HealthGrade = 'sound' | 'watch' | 'act'

export type HealthReason = {
  code:
    | CultureSign
    | 'egg-ratio-declining'
    | 'egg-ratio-unsure'
    | 'egg-ratio-crowded'
    | 'egg-ratio-stationary'
    | 'falling'
    | 'ammonia-high'
    | 'ammonia-rising'
    | 'oxygen-low'
    | 'ph-low'
    | 'ph-below-best'
  grade: 'watch' | 'act'
  source: string
}

export type CultureHealthInput = {
  eggRatio?: number
  /** Females looked at for it; left out, it is taken as sure. */
  females?: number
  /** Denser than gives most: few eggs are then crowding, and the cure is thinning. */
  isCrowded?: boolean
  trend?: 'rising' | 'steady' | 'falling'
  nh3MgL?: number
  oxygenMgL?: number
  pH?: number
  signs?: readonly CultureSign[]
}

export type CultureHealth = {
  /** `unknown` when nothing at all was looked at. */
  grade: HealthGrade | 'unknown'
  /** Most pressing first: same-day signs, eggs, trend, water. */
  reasons: HealthReason[]
  /** What the egg ratio says by itself; null without one. */
  phase: 'declining' | 'stationary' | 'growing' | null
}

const SNELL = 'Snell, Childress, Boyer & Hoff 1987, J. World Aquac. Soc. 18:270-277'
const FAO = 'FAO Fish. Tech. Pap. 361, sect. 3.5 (Lavens & Sorgeloos 1996); from memory'
const PRACTICE = 'common practice'

const SIGN_REASONS: Record<CultureSign, HealthReason> = {
  'swimming-slow': { code: 'swimming-slow', grade: 'act', source: SNELL },
  sinking: { code: 'sinking', grade: 'act', source: PRACTICE },
  smell: { code: 'smell', grade: 'act', source: PRACTICE },
  foam: { code: 'foam', grade: 'watch', source: PRACTICE },
  ciliates: { code: 'ciliates', grade: 'watch', source: PRACTICE },
  // A dying culture clears too; a well one clears because it has eaten.
  'clear-water': { code: 'clear-water', grade: 'watch', source: PRACTICE },
}

function phaseOf(eggRatio: number): NonNullable<CultureHealth['phase']> {
  if (eggRatio < EGG_RATIO_BANDS.declining) return 'declining'
  return eggRatio < EGG_RATIO_BANDS.growing ? 'stationary' : 'growing'
}

/** One-sided 5 %: as an exact interval of nine in ten. */
const SURE = 0.9

/**
 * True where eggs are so few that chance alone would hardly say so: on enough females, and fewer than one sample in twenty
 * of a culture that holds its own would show (exact Poisson interval: Garwood 1936, Biometrika 28:437-442).
 */
export function isShortOfEggs({ eggRatio, females }: { eggRatio: number; females?: number | undefined }): boolean {
  if (females === undefined) return eggRatio < EGG_RATIO_BANDS.declining
  assertInRange('females', females, { min: 0, unit: 'animals' })
  if (females < FEMALES_NEEDED) return false
  const { upper } = poissonInterval({ count: Math.round(eggRatio * females), level: SURE })
  return upper < EGG_RATIO_BANDS.declining * females
}

function fewEggs(eggRatio: number, { females, isCrowded }: CultureHealthInput): HealthReason {
  if (!isShortOfEggs({ eggRatio, females })) return { code: 'egg-ratio-unsure', grade: 'watch', source: PRACTICE }
  if (isCrowded === true) return { code: 'egg-ratio-crowded', grade: 'act', source: PRACTICE }
  return { code: 'egg-ratio-declining', grade: 'act', source: SNELL }
}

function waterReasons({ nh3MgL, oxygenMgL, pH }: CultureHealthInput): HealthReason[] {
  const reasons: HealthReason[] = []
  if (nh3MgL !== undefined) {
    assertInRange('nh3MgL', nh3MgL, { min: 0, max: 100, unit: 'mg/L' })
    if (nh3MgL >= CULTURE_WATER_LIMITS.nh3MgL) reasons.push({ code: 'ammonia-high', grade: 'act', source: FAO })
    else if (nh3MgL >= NH3_WATCH_MG_L) {
      const source = 'Araujo, Hagiwara & Snell 2001, Hydrobiologia 446/447:363-368'
      reasons.push({ code: 'ammonia-rising', grade: 'watch', source })
    }
  }
  if (oxygenMgL !== undefined) {
    assertInRange('oxygenMgL', oxygenMgL, { min: 0, max: 50, unit: 'mg/L' })
    // The survival floor is about 2; at half as much again there is still time.
    if (oxygenMgL <= CULTURE_WATER_LIMITS.oxygenMgL) reasons.push({ code: 'oxygen-low', grade: 'act', source: FAO })
    else if (oxygenMgL < 1.5 * CULTURE_WATER_LIMITS.oxygenMgL) {
      reasons.push({ code: 'oxygen-low', grade: 'watch', source: PRACTICE })
    }
  }
  if (pH !== undefined) {
    assertInRange('pH', pH, { min: 0, max: 14 })
    if (pH <= CULTURE_WATER_LIMITS.pHSurvival) reasons.push({ code: 'ph-low', grade: 'act', source: FAO })
    else if (pH < CULTURE_WATER_LIMITS.pHBest) reasons.push({ code: 'ph-below-best', grade: 'watch', source: FAO })
  }
  return reasons
}

/**
 * How a rotifer culture is doing, from whatever was looked at: same-day signs lead, then eggs (a day late), the trend
 * of the counts, and the water (un-ionised ammonia as NH3, oxygen, pH).
 * @throws ArgumentError when a figure cannot be.
 */
export function cultureHealth(input: CultureHealthInput): CultureHealth {
  const { eggRatio, trend, signs = [] } = input
  const reasons: HealthReason[] = [...new Set(signs)].map((sign) => SIGN_REASONS[sign])
  if (eggRatio !== undefined) assertInRange('eggRatio', eggRatio, { min: 0, max: 20, unit: 'eggs per female' })
  const phase = eggRatio === undefined ? null : phaseOf(eggRatio)
  if (phase === 'declining') reasons.push(fewEggs(eggRatio!, input))
  if (phase === 'stationary') reasons.push({ code: 'egg-ratio-stationary', grade: 'watch', source: SNELL })
  if (trend === 'falling') reasons.push({ code: 'falling', grade: 'act', source: PRACTICE })
  reasons.push(...waterReasons(input))
  const isActing = reasons.some((reason) => reason.grade === 'act')
  const looks = [input.eggRatio, input.trend, input.nh3MgL, input.oxygenMgL, input.pH]
  const wasLookedAt = looks.some((look) => look !== undefined)
  const grade = isActing ? 'act' : reasons.length > 0 ? 'watch' : 'sound'
  return { grade: wasLookedAt || input.signs !== undefined ? grade : 'unknown', reasons, phase }
}
