import type { CultureHistory } from './culture-history.ts'

// Growth rates move slowly and a fit costs a hundred filter passes, so rates are learned anew every seventh day, from the
// thirty days before it; of a culture younger than four weeks after every fourth part of its life: what its first days said
// of it, an inoculum guessed too low among them, would be believed for a week against all that is counted. common practice
const LEARNED_EVERY_DAYS = 7
const LEARNED_EVERY_PART = 1 / 4
const LEARNED_FROM_DAYS = 30
const FEWEST_TO_LEARN_FROM = 3

/** Days from one learning to the next for a culture of that age. */
const learnedEvery = (ageDays: number): number =>
  Math.min(LEARNED_EVERY_DAYS, Math.max(1, Math.floor(ageDays * LEARNED_EVERY_PART)))

/** The part of a history, its days counted from the start of the culture, that its rates are learned from as it stands. */
export function learningPart(history: CultureHistory, every: (ageDays: number) => number = learnedEvery) {
  const newest = history.observations.at(-1)?.day ?? 0
  const step = every(newest)
  const to = Math.floor(newest / step) * step
  const within = ({ day }: { day: number }) => day <= to && day > to - LEARNED_FROM_DAYS
  const observations = history.observations.filter(within)
  if (observations.length < FEWEST_TO_LEARN_FROM) return history
  return {
    ...history,
    observations,
    removals: (history.removals ?? []).filter(within),
    additions: (history.additions ?? []).filter(within),
  }
}
