import {
  type CultureEstimate,
  type CultureHistory,
  type CultureParameters,
  estimateCulture,
  fitCulture,
  learningPart,
} from '@fryward/live-feed'
import { rememberedByContent } from '../memo/remembered.ts'

const mostKept = 2000

const fits = rememberedByContent<CultureParameters>(mostKept)
const estimates = rememberedByContent<CultureEstimate>(mostKept)

/**
 * Where a culture stands at a day of its own axis, by all of its counts, harvests and inoculations.
 * Rates are learned from a part of them, now and then; the estimate itself always uses every record.
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
