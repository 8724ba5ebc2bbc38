import { DEFAULT_LEVEL, normalDeviate } from './intervals.ts'
import { type Observation, riskSets } from './observation.ts'

export type SurvivalStep = {
  time: number
  /** Animals alive and under watch just before this time. */
  atRisk: number
  events: number
  /** Share alive after this time. */
  survival: number
  /** Greenwood's; 0 where nobody is left, so read the interval there. */
  standardError: number
  lower: number
  upper: number
}

export type SurvivalCurve = {
  /** One step per time with a death, in order. The share is 1 before the first. */
  steps: SurvivalStep[]
  /** First time at which no more than half are alive; null when more than half outlived the watch. */
  median: number | null
  animals: number
  events: number
}

/** Products of shares that are a half by arithmetic come out a few 1e-16 beside it. */
const HALF = 0.5 + 1e-12

/**
 * Product-limit estimate of survival with Greenwood's standard error and an interval on the log scale, cut at 1.
 * Kaplan & Meier 1958, J. Am. Stat. Assoc. 53:457-481; Greenwood 1926, Reports on Public Health 33.
 * Where the last animal dies the interval's upper end is that of the step before, as survival can only fall.
 * @throws ArgumentError for no observations, a negative or missing number, or level not inside (0, 1).
 */
export function kaplanMeier(
  observations: readonly Observation[],
  { level = DEFAULT_LEVEL }: { level?: number } = {},
): SurvivalCurve {
  const z = normalDeviate(level)
  const steps: SurvivalStep[] = []
  let survival = 1
  let greenwood = 0
  for (const { time, atRisk, events, survivors } of riskSets(observations)) {
    if (events === 0) continue
    survival *= survivors / atRisk
    const before = steps.at(-1)?.upper ?? 1
    if (survival === 0) {
      steps.push({ time, atRisk, events, survival, standardError: 0, lower: 0, upper: before })
      continue
    }
    greenwood += events / (atRisk * survivors)
    const logError = Math.sqrt(greenwood)
    steps.push({
      time,
      atRisk,
      events,
      survival,
      standardError: survival * logError,
      lower: survival * Math.exp(-z * logError),
      upper: Math.min(1, survival * Math.exp(z * logError)),
    })
  }
  return {
    steps,
    median: steps.find((step) => step.survival <= HALF)?.time ?? null,
    animals: observations.reduce((sum, { weight = 1 }) => sum + weight, 0),
    events: steps.reduce((sum, step) => sum + step.events, 0),
  }
}

/** The step that holds just after a time; null before the first death, where everyone is alive. */
export function survivalAt(curve: SurvivalCurve, time: number): SurvivalStep | null {
  return curve.steps.findLast((step) => step.time <= time) ?? null
}
