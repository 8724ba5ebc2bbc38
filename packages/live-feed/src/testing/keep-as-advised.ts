import { estimateCulture } from '../culture-estimate.ts'
import { fitCulture } from '../culture-fit.ts'
import type { CultureParameters } from '../culture-parameters.ts'
import { harvestAdvice } from '../harvest-advice.ts'
import { learningPart } from '../learning-part.ts'
import { bestConstant, KEPT, type Keeper, type KeptCulture, keep } from './kept-cultures.ts'

export const FLOOR_PER_ML = 50
/** Days from one learning of the rates to the next, by the age of the culture. */
type LearnedEvery = (ageDays: number) => number

/** Harvests exactly what is advised on what the keeper has counted. */
export function asAdvised({ temperatureC, salinity, strain }: KeptCulture, every?: LearnedEvery): Keeper {
  const conditions = { temperatureC, salinity, strain }
  let learned: { from: string; parameters: CultureParameters } | undefined
  return ({ day, observations, removals }) => {
    const part = learningPart({ ...conditions, observations, removals }, every)
    const from = `${part.observations[0]?.day} ${part.observations.length}`
    if (learned?.from !== from) learned = { from, parameters: fitCulture(part) }
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

export function thinCultures(cultures: readonly KeptCulture[], { every }: { every?: LearnedEvery } = {}): Thinning {
  const kept = cultures.map((culture) => ({
    ...keep(culture, asAdvised(culture, every)),
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
