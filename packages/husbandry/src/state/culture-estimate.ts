import {
  type CultureEstimate,
  type CultureHistory,
  type CultureParameters,
  estimateCulture,
  fitCulture,
} from '@fryward/live-feed'
import { rememberedByContent } from '../memo/remembered.ts'

// Growth rates move slowly and a fit costs a hundred filter passes, so rates are learned anew with every seventh day
// of a culture's life, from the thirty days before it; the estimate itself always uses every record.
const refitEveryDays = 7
const learnFromDays = 30
const fewestToLearnFrom = 3
const mostKept = 2000

const fits = rememberedByContent<CultureParameters>(mostKept)
const estimates = rememberedByContent<CultureEstimate>(mostKept)

/**
 * Where a culture stands at a day of its own axis, by all of its counts, harvests and inoculations.
 * Fits and estimates are remembered by their history's content: the same records give the same answer with or without the memory.
 */
export function cultureEstimateAt(history: CultureHistory, day: number): CultureEstimate {
  const last = lastDay(history)
  const learned = learningPart(history)
  const atDay = Math.max(day, last)
  return estimates([history, atDay], () => {
    const rates = fits(learned, () => fitCulture(learned))
    return estimateCulture(history, rates, { atDay })
  })
}

function lastDay({ observations, removals = [], additions = [] }: CultureHistory): number {
  return Math.max(...[...observations, ...removals, ...additions].map(({ day }) => day))
}

function learningPart(history: CultureHistory): CultureHistory {
  const newest = history.observations.at(-1)?.day ?? 0
  const to = Math.floor(newest / refitEveryDays) * refitEveryDays
  const within = ({ day }: { day: number }) => day <= to && day > to - learnFromDays
  const observations = history.observations.filter(within)
  if (observations.length < fewestToLearnFrom) return history
  return {
    ...history,
    observations,
    removals: (history.removals ?? []).filter(within),
    additions: (history.additions ?? []).filter(within),
  }
}
