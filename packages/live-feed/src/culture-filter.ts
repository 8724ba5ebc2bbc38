import type { CultureEvent, LogObservation } from './culture-history.ts'
import type { CultureRates, EggHabits } from './culture-parameters.ts'

/** Log density and the passing deviation of growth, with their covariance. */
export type CultureState = {
  day: number
  logDensity: number
  spell: number
  varDensity: number
  covariance: number
  varSpell: number
}

export type Conditions = EggHabits & { dilutionPerDay: number }

/** The last eggs seen, which speak for the day that follows them. */
export type EggSighting = { day: number; logEggs: number } | null

/** Eggs show growth 18-24 h ahead (Snell, Childress, Boyer & Hoff 1987, J. World Aquac. Soc. 18:270-277). */
const EGGS_SPEAK_FOR_DAYS = 1

/** Longest step for which the deviation of growth is averaged rather than followed, days. */
const LONGEST_STEP_DAYS = 1

/** Whole days since the eggs were seen; their word is good on day 0. */
export function eggAgeDays(eggs: NonNullable<EggSighting>, day: number): number {
  return Math.floor((day - eggs.day) / EGGS_SPEAK_FOR_DAYS + 1e-9)
}

/**
 * Growth per day that eggs promise over and above the usual at `day`, with its variance: sure on the day after they
 * were seen, then fading to the culture's habit.
 */
export function eggEffect(rates: CultureRates, habits: EggHabits, eggs: EggSighting, day: number) {
  const unseen = (rates.eggWeightPerDay * habits.eggSd) ** 2
  if (eggs === null) return { growth: 0, variance: unseen }
  const share = habits.eggCarryOver ** Math.max(0, eggAgeDays(eggs, day))
  return {
    growth: rates.eggWeightPerDay * (eggs.logEggs - habits.eggBaseline) * share,
    variance: unseen * (1 - share * share),
  }
}

export type LogisticStep = { logDensity: number; toDensity: number; toGrowth: number }

/**
 * Logistic growth over a step in closed form: dx/dt = growth - crowding * exp(x). `toDensity` and `toGrowth` are the
 * derivatives of the result, which the filter linearises by.
 */
export function logisticStep(logDensity: number, growth: number, crowding: number, days: number): LogisticStep {
  const isFlat = Math.abs(growth * days) < 1e-5
  const mass = isFlat ? days + (growth * days * days) / 2 : Math.expm1(growth * days) / growth
  const massSlope = isFlat ? (days * days) / 2 : (days * Math.exp(growth * days) - mass) / growth
  const crowded = crowding * Math.exp(logDensity)
  const denominator = 1 + crowded * mass
  return {
    logDensity: logDensity + growth * days - Math.log(denominator),
    toDensity: 1 / denominator,
    toGrowth: days - (crowded * massSlope) / denominator,
  }
}

/** What one step adds of noise, and how much of a spell is left (an Ornstein-Uhlenbeck process and its integral). */
export function stepNoise(rates: CultureRates, days: number) {
  const { reversionPerDay, spellSdPerDay, dailySd } = rates
  const left = Math.exp(-reversionPerDay * days)
  const variance = spellSdPerDay * spellSdPerDay
  const integrated = (variance * (2 * reversionPerDay * days - 3 + 4 * left - left * left)) / reversionPerDay ** 2
  return {
    left,
    /** Mean of a spell over the step, as a share of its start. */
    meanShare: (1 - left) / (reversionPerDay * days),
    varDensity: dailySd * dailySd * days + Math.max(0, integrated),
    covariance: (variance * (1 - left) ** 2) / reversionPerDay,
    varSpell: variance * (1 - left * left),
  }
}

type StepContext = { drift: number; driftVariance: number; days: number }

function step(state: CultureState, rates: CultureRates, context: StepContext): CultureState {
  const { drift, driftVariance, days } = context
  const noise = stepNoise(rates, days)
  const crowding = rates.growthPerDay / rates.capacityPerMl
  const growth = rates.growthPerDay + drift + state.spell * noise.meanShare
  const grown = logisticStep(state.logDensity, growth, crowding, days)
  const toSpell = grown.toGrowth * noise.meanShare
  const { varDensity, covariance, varSpell } = state
  return {
    day: state.day + days,
    logDensity: grown.logDensity,
    spell: state.spell * noise.left,
    varDensity:
      grown.toDensity ** 2 * varDensity +
      2 * grown.toDensity * toSpell * covariance +
      toSpell ** 2 * varSpell +
      grown.toGrowth ** 2 * driftVariance +
      noise.varDensity,
    covariance: noise.left * (grown.toDensity * covariance + toSpell * varSpell) + noise.covariance,
    varSpell: noise.left ** 2 * varSpell + noise.varSpell,
  }
}

function applyEvent(state: CultureState, event: CultureEvent): CultureState {
  const before = Math.exp(state.logDensity)
  const afterAddition = before + event.addedPerMl
  const slope = before / afterAddition
  return {
    ...state,
    logDensity: Math.log(afterAddition) + Math.log(event.keepShare),
    varDensity: state.varDensity * slope * slope,
    covariance: state.covariance * slope,
  }
}

/** Pieces of at most a day from one day to another, cut where the eggs fall silent. */
export function stepLengths(fromDay: number, toDay: number, eggs: EggSighting): { day: number; days: number }[] {
  const silent = eggs === null ? fromDay : eggs.day + EGGS_SPEAK_FOR_DAYS
  const pieces: { day: number; days: number }[] = []
  let day = fromDay
  while (toDay - day > 1e-9) {
    let days = Math.min(LONGEST_STEP_DAYS, toDay - day)
    if (silent > day + 1e-9 && silent < day + days - 1e-9) days = silent - day
    pieces.push({ day, days })
    day += days
  }
  return pieces
}

/** Carries the state to `toDay`, through the given events in their order. */
export function advance(
  state: CultureState,
  rates: CultureRates,
  {
    toDay,
    eggs,
    events,
    conditions,
  }: { toDay: number; eggs: EggSighting; events: readonly CultureEvent[]; conditions: Conditions },
): CultureState {
  let current = state
  const move = (until: number) => {
    for (const piece of stepLengths(current.day, until, eggs)) {
      const promised = eggEffect(rates, conditions, eggs, piece.day)
      const drift = promised.growth - conditions.dilutionPerDay
      current = step(current, rates, { drift, driftVariance: promised.variance, days: piece.days })
    }
  }
  for (const event of events) {
    move(event.day)
    current = applyEvent(current, event)
  }
  move(toDay)
  return { ...current, day: toDay }
}

/** Before the first count: the density is as counted, the spell is anything usual. */
function initialState(observation: LogObservation, rates: CultureRates): CultureState {
  return {
    day: observation.day,
    logDensity: observation.logDensity,
    spell: 0,
    varDensity: observation.countVariance + rates.handlingSd ** 2,
    covariance: 0,
    varSpell: rates.spellSdPerDay ** 2,
  }
}

type Prediction = { logDensity: number; variance: number; logLikelihood: number }

/** Kalman update of a predicted state by one count; also says what was expected of it. */
function observe(
  state: CultureState,
  observation: LogObservation,
  rates: CultureRates,
): { state: CultureState; prediction: Prediction } {
  const variance = state.varDensity + observation.countVariance + rates.handlingSd ** 2
  const surprise = observation.logDensity - state.logDensity
  const gainDensity = state.varDensity / variance
  const gainSpell = state.covariance / variance
  return {
    prediction: {
      logDensity: state.logDensity,
      variance,
      logLikelihood: -0.5 * (Math.log(2 * Math.PI * variance) + surprise ** 2 / variance),
    },
    state: {
      day: state.day,
      logDensity: state.logDensity + gainDensity * surprise,
      spell: state.spell + gainSpell * surprise,
      varDensity: state.varDensity * (1 - gainDensity),
      covariance: state.covariance * (1 - gainDensity),
      varSpell: state.varSpell - gainSpell * state.covariance,
    },
  }
}

export type FilterRun = {
  /** One entry per observation after the first, from earlier ones alone. */
  predictions: Prediction[]
  state: CultureState
  eggs: EggSighting
  logLikelihood: number
}

/** The events of [fromDay, toDay): those of a count's own day come after that count. */
export function eventsBetween(events: readonly CultureEvent[], fromDay: number, toDay: number): CultureEvent[] {
  return events.filter((event) => event.day >= fromDay && event.day < toDay)
}

/**
 * One pass of the extended Kalman filter over a history of one observation or more. `stretches[i]` holds the events before
 * observation i + 1.
 */
export function runFilter({
  observations,
  stretches,
  rates,
  conditions,
}: {
  observations: readonly LogObservation[]
  stretches: readonly (readonly CultureEvent[])[]
  rates: CultureRates
  conditions: Conditions
}): FilterRun {
  const first = observations[0]!
  let state = initialState(first, rates)
  let eggs: EggSighting = first.logEggs === null ? null : { day: first.day, logEggs: first.logEggs }
  let logLikelihood = 0
  const predictions: Prediction[] = []
  for (const [index, observation] of observations.slice(1).entries()) {
    const predicted = advance(state, rates, {
      toDay: observation.day,
      eggs,
      events: stretches[index]!,
      conditions,
    })
    const seen = observe(predicted, observation, rates)
    predictions.push(seen.prediction)
    logLikelihood += seen.prediction.logLikelihood
    state = seen.state
    if (observation.logEggs !== null) eggs = { day: observation.day, logEggs: observation.logEggs }
  }
  return { predictions, state, eggs, logLikelihood }
}
