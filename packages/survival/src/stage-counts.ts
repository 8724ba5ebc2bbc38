import { ArgumentError, assertAtLeast, assertLevel, assertWhole } from './argument-error.ts'
import { DEFAULT_LEVEL } from './intervals.ts'
import { effectiveNumber, type Share, shareInterval } from './share-interval.ts'

export type StageCount = {
  /** What was reached: eggs, hatched, first feed, day 5, metamorphosis, settled, ... */
  stage: string
  /** Animals that reached it. */
  animals: number
  /** Standard error of an estimated count; 0 (a head count) when left out. */
  standardError?: number
  /** Animals taken away alive after this stage and before the next: moved, placed or culled. No deaths. */
  removed?: number
}

export type StageResult = {
  stage: string
  animals: number
  standardError: number
  /** Died or missing since the stage before. */
  lost: number
  /** Of the stage before, those who left alive counted for half of the way; null at the first stage and after an empty one. */
  fromPrevious: Share | null
  /** Of the first stage, corrected for those who left alive; null at the first stage and once all of them have left alive. */
  fromFirst: Share | null
  /** True when estimates say that more reached this stage than could have: a count is off, and lost is taken as 0. */
  isAboveBook: boolean
}

type Step = { atRisk: number; lost: number; share: number; isAboveBook: boolean }

function check(stages: readonly StageCount[]): void {
  if (stages.length === 0)
    throw new ArgumentError({ argument: 'stages', value: 'empty', allowed: 'at least one stage' })
  stages.forEach(({ animals, standardError = 0, removed = 0 }, index) => {
    const at = `stages[${index}]`
    if (standardError > 0) assertAtLeast(`${at}.animals`, animals, 0)
    else assertWhole(`${at}.animals`, animals)
    assertAtLeast(`${at}.standardError`, standardError, 0)
    assertWhole(`${at}.removed`, removed)
    if (removed > animals && standardError === 0) {
      throw new ArgumentError({
        argument: `${at}.removed`,
        value: removed,
        allowed: `up to the ${animals} animals of the stage`,
      })
    }
  })
}

/** From one stage to the next by the actuarial method: who left alive was at risk for half of the way (Cutler & Ederer 1958, J. Chronic Dis. 8:699-712). */
function stepTo(next: StageCount, { from, index }: { from: StageCount; index: number }): Step {
  const removed = from.removed ?? 0
  const book = from.animals - removed
  const isEstimated = (from.standardError ?? 0) > 0 || (next.standardError ?? 0) > 0
  if (next.animals > book && !isEstimated) {
    throw new ArgumentError({
      argument: `stages[${index}].animals`,
      value: next.animals,
      allowed: `up to the ${book} animals left of stage "${from.stage}"`,
    })
  }
  // Estimates may say that more came through than were there: then at least those were there.
  const start = Math.max(from.animals, next.animals + removed)
  const lost = start - removed - next.animals
  const atRisk = start - removed / 2
  // Where nobody was left to be watched the share since the first stays as it was.
  return { atRisk, lost, share: atRisk === 0 ? 1 : 1 - lost / atRisk, isAboveBook: next.animals > book }
}

/** Relative error of the ratio of two counts; a count of 0 adds none, as its share is 0 already. */
function ratioError(a: StageCount, b: StageCount): number {
  const relative = ({ animals, standardError = 0 }: StageCount) => (animals > 0 ? standardError / animals : 0)
  return Math.hypot(relative(a), relative(b))
}

/**
 * How many made it, stage by stage, each share with its interval and the number it rests on.
 * Shares carry a Wilson interval (Clopper-Pearson to 30 animals), widened by the counts' own errors. Animals moved,
 * placed or culled are censored half-way, not dead. The share from the first stage is the product of the steps, with
 * Greenwood's variance; the errors of the counts between cancel and those of the first and last remain.
 * @throws ArgumentError for no stages, a negative or fractional head count, or a head count above what was left.
 */
export function stageCounts({ stages, level = DEFAULT_LEVEL }: { stages: readonly StageCount[]; level?: number }): {
  level: number
  stages: StageResult[]
} {
  assertLevel(level)
  check(stages)
  const results: StageResult[] = []
  let cumulative = 1
  let greenwood = 0
  let fewest = Number.POSITIVE_INFINITY
  stages.forEach((next, index) => {
    const from = stages[index - 1]
    const first = stages[0]
    const { stage, animals, standardError = 0 } = next
    if (from === undefined || first === undefined) {
      const start = { lost: 0, fromPrevious: null, fromFirst: null, isAboveBook: false }
      results.push({ stage, animals, standardError, ...start })
      return
    }
    const { atRisk, lost, share, isAboveBook } = stepTo(next, { from, index })
    cumulative *= share
    greenwood += lost === 0 ? 0 : lost / (atRisk * (atRisk - lost))
    if (atRisk > 0) fewest = Math.min(fewest, atRisk)
    const of = effectiveNumber({ share: cumulative, greenwood, fewest })
    results.push({
      stage,
      animals,
      standardError,
      lost,
      fromPrevious:
        atRisk > 0 ? shareInterval({ share, of: atRisk, relativeError: ratioError(from, next), level }) : null,
      fromFirst:
        Number.isFinite(of) && (atRisk > 0 || cumulative === 0)
          ? shareInterval({ share: cumulative, of, relativeError: ratioError(first, next), level })
          : null,
      isAboveBook,
    })
  })
  return { level, stages: results }
}
