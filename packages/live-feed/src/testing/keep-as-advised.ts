import { estimateCulture } from '../culture-estimate.ts'
import { fitCulture } from '../culture-fit.ts'
import type { CultureParameters } from '../culture-parameters.ts'
import { harvestAdvice } from '../harvest-advice.ts'
import { bestConstant, KEPT, type Keeper, type KeptCulture, keep } from './kept-cultures.ts'

export const FLOOR_PER_ML = 50
/** As a room learns: rates anew with every seventh day, from the thirty days before it. */
const REFIT_EVERY_DAYS = 7
const LEARN_FROM_DAYS = 30
const FEWEST_TO_LEARN_FROM = 3

/** Harvests exactly what is advised on what the keeper has counted. */
export function asAdvised({ temperatureC, salinity, strain }: KeptCulture, refitEveryDays = REFIT_EVERY_DAYS): Keeper {
  const conditions = { temperatureC, salinity, strain }
  let learned: { from: string; parameters: CultureParameters } | undefined
  return ({ day, observations, removals }) => {
    const newest = observations.at(-1)?.day ?? 0
    const to = Math.floor(newest / refitEveryDays) * refitEveryDays
    const isLearnedFrom = (seen: { day: number }) => seen.day <= to && seen.day > to - LEARN_FROM_DAYS
    const part = { observations: observations.filter(isLearnedFrom), removals: removals.filter(isLearnedFrom) }
    const isEnough = part.observations.length >= FEWEST_TO_LEARN_FROM
    const from = isEnough ? `${to}` : `all ${observations.length}`
    if (learned?.from !== from) {
      const history = { ...conditions, ...(isEnough ? part : { observations, removals }) }
      learned = { from, parameters: fitCulture(history) }
    }
    const estimate = estimateCulture({ ...conditions, observations, removals }, learned.parameters, { atDay: day })
    return harvestAdvice({
      estimate,
      volumeL: KEPT.volumeL,
      ageDays: day,
      isFirstHarvest: removals.length === 0,
      floorPerMl: FLOOR_PER_ML,
    }).shareOfVolume
  }
}

export type Thinning = {
  /** Animals harvested over what the best constant share in hindsight would have given, one a culture, rising. */
  ratios: number[]
  /** Shares of the days from the first on which a culture was ripe. */
  underATwentieth: number
  none: number
  /** Days on which a harvest left less than the floor behind. */
  underFloor: number
  most: number
}

export function thinCultures(
  cultures: readonly KeptCulture[],
  { refitEveryDays = REFIT_EVERY_DAYS }: { refitEveryDays?: number } = {},
): Thinning {
  const kept = cultures.map((culture) => ({
    ...keep(culture, asAdvised(culture, refitEveryDays)),
    best: bestConstant(culture).harvested,
  }))
  const days = kept.flatMap(({ shares, leftPerMl }) =>
    shares.map((share, i) => ({ share, leftPerMl: leftPerMl[i] ?? 0 })),
  )
  const partOf = (isOne: (day: (typeof days)[number]) => boolean) => days.filter(isOne).length / days.length
  return {
    ratios: kept.map(({ harvested, best }) => harvested / best).sort((a, b) => a - b),
    underATwentieth: partOf(({ share }) => share > 0 && share < 0.05),
    none: partOf(({ share }) => share === 0),
    underFloor: days.filter(({ share, leftPerMl }) => share > 0 && leftPerMl < FLOOR_PER_ML).length,
    most: Math.max(...days.map(({ share }) => share)),
  }
}

/** The value under which a share of sorted values lies. */
export const atShare = (sorted: readonly number[], share: number): number =>
  sorted[Math.floor((sorted.length - 1) * share)] ?? Number.NaN
