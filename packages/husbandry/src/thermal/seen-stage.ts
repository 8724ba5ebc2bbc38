import cdf from '@stdlib/stats-base-dists-normal-cdf'
import type { ClutchStage, SpeciesProfile } from '../species/index.ts'
import { assumption } from '../species/source.ts'
import { checkInstant } from './check.ts'
import type { Likelihood } from './distribute.ts'
import type { Basis } from './forecast.ts'
import type { ThermalClock } from './thermal-clock.ts'

/** What a caretaker saw of the clutch, and when. */
export interface SeenStage {
  /** Id of one of the species' clutchStages, such as 'silver' or 'eyes'. */
  stage: string
  /** ISO 8601 instant. */
  at: string
}

const readingError = assumption(0.07, 'a caretaker judges development to about half a day of seven')
const wrongLooks = assumption(0.02, 'one look in fifty is simply wrong, so that no look alone rules a night out')

/** What weighing a stage rests on. */
export const stageBasis: readonly Basis[] = [
  { name: 'error of judging a stage', unit: 'share', ...readingError },
  { name: 'looks that are wrong', unit: 'share', ...wrongLooks },
]

/** Probability that this stage is the one named at this share of development, given the error of judging it. */
function stageProbability(stage: ClutchStage, share: number): number {
  const { from, to } = stage.share.value
  const past = from <= 0 ? 1 : cdf(share, from, readingError.value)
  const pastNext = to >= 1 ? 0 : cdf(share, to, readingError.value)
  return Math.max(0, past - pastNext)
}

/**
 * How well a duration fits the stages seen: the progress at each look, as a share of that duration.
 * @throws RangeError for a stage that the species' profile does not have, or a look before the spawning.
 */
export function stageLikelihood(
  looks: readonly SeenStage[],
  species: SpeciesProfile,
  clock: ThermalClock,
  spawnedMs: number,
): Likelihood {
  const read = looks.map((look, index) => {
    const atMs = checkInstant(`seenStage[${index}].at`, look.at)
    if (atMs < spawnedMs) throw new RangeError(`seenStage[${index}].at: ${look.at} is before spawnedAt`)
    return { stage: findStage(species, look.stage, index), progressDays: clock.progressDays(atMs) }
  })
  return (logDuration) =>
    read.reduce((product, { stage, progressDays }) => {
      const fit = stageProbability(stage, progressDays / Math.exp(logDuration))
      return product * (wrongLooks.value + (1 - wrongLooks.value) * fit)
    }, 1)
}

function findStage(species: SpeciesProfile, id: string, index: number): ClutchStage {
  const stage = species.clutchStages.find((candidate) => candidate.id === id)
  if (stage) return stage
  const known = species.clutchStages.map((candidate) => candidate.id).join(', ') || 'none'
  throw new RangeError(`seenStage[${index}].stage: "${id}" is not a stage of ${species.id}; it has ${known}`)
}
