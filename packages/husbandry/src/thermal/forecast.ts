import type { Source } from '../species/index.ts'
import { checkDate, checkInstant, isPlainDate, toInstantText } from './check.ts'
import { type DateSpan, distribute, type Likelihood, shareBeyond } from './distribute.ts'
import type { Period } from './nights.ts'
import type { LogNormal } from './pair-level.ts'

export interface NightProbability {
  /** Local date; a night belongs to the date on which its lights went off. */
  date: string
  probability: number
  /** ISO 8601 instants between which it happens, if it happens on this date. */
  windowStartsAt: string
  windowEndsAt: string
}

/** A value that an answer rests on, for the screen's "why". */
export interface Basis {
  name: string
  value: number
  unit: string
  source: Source
}

export interface Forecast<Entry extends NightProbability = NightProbability> {
  /** In order of date, from the first that is still possible; probabilities sum to 1. */
  nights: Entry[]
  likeliest: Entry
  /** Dates by which 10 % and 90 % of the probability is used up. */
  window80: { from: string; to: string }
  /** The duration expected of this pair at the reference temperature, before anything was seen of this clutch. */
  level: { medianDays: number; logSd: number; learnedFrom: number }
  /** Share of the level's distribution that lies later than the last "not yet"; 1 when none was given. */
  shareStillToCome: number
  /** True when less than 2.5 % was expected to last this long: look whether the clutch is alive. */
  isOverdue: boolean
  /** True when water up to the likeliest date was outside the temperatures at which durations were seen. */
  isExtrapolated: boolean
  hoursOutsideTried: number
  basis: Basis[]
}

/** "Not yet by then": an instant, or a local date that stands for its morning. */
interface NotYet {
  argument: string
  value: string
}

export interface ForecastInput {
  periods: Iterable<Period>
  startMs: number
  progressDays: (epochMs: number) => number
  hoursOutsideTried: (untilMs: number) => number
  level: LogNormal
  learnedFrom: number
  likelihood?: Likelihood | undefined
  notYet: readonly NotYet[]
  basis: Basis[]
}

interface Span extends DateSpan {
  period: Period
}

// Later than all but one in forty, as the upper end of an interval of 95 %. common practice
const overdueShare = 0.025

/** Spreads a duration over dates, conditioned on what was seen so far. */
export function forecast(input: ForecastInput): Forecast {
  const openShare = openShareAfter(input.notYet)
  const found = distribute(spansOf(input, openShare), input.level, input.likelihood)
  if (!found) {
    const given = input.notYet.map(({ argument, value }) => `${argument}: ${value}`).join(', ')
    const median = Math.exp(input.level.logMean).toFixed(1)
    throw new RangeError(`${given} is too late to be true of a duration of about ${median} days`)
  }
  const nights = found.map(({ span, probability }) => toEntry(span.period, probability))
  const likeliestIndex = nights.reduce(
    (best, { probability }, index) => (probability > nights[best]!.probability ? index : best),
    0,
  )
  const likeliestPeriod = found[likeliestIndex]!.span.period
  const shareStillToCome = shareBeyond(found[0]!.span.fromDays, input.level)
  const hoursOutsideTried = input.hoursOutsideTried(likeliestPeriod.windowToMs)
  return {
    nights,
    likeliest: nights[likeliestIndex]!,
    window80: { from: dateAt(nights, 0.1), to: dateAt(nights, 0.9) },
    level: { medianDays: Math.exp(input.level.logMean), logSd: input.level.logSd, learnedFrom: input.learnedFrom },
    shareStillToCome,
    isOverdue: shareStillToCome < overdueShare,
    isExtrapolated: hoursOutsideTried > 0,
    hoursOutsideTried,
    basis: input.basis,
  }
}

function* spansOf(input: ForecastInput, openShare: (period: Period) => number): Generator<Span> {
  let fromDays = 0
  for (const period of input.periods) {
    const toDays = input.progressDays(period.endsMs)
    yield { fromDays, toDays, open: openShare(period), period }
    fromDays = toDays
  }
}

/** Share of each period that the strongest "not yet" leaves open: hatching is uniform over its window. */
function openShareAfter(notYet: readonly NotYet[]): (period: Period) => number {
  const tests = notYet.map(({ argument, value }) => {
    if (isPlainDate(value)) {
      const morning = checkDate(argument, value).toString()
      return (period: Period) => (period.morningAfter <= morning ? 0 : 1)
    }
    const byMs = checkInstant(argument, value)
    return ({ windowFromMs, windowToMs }: Period) => {
      if (byMs >= windowToMs) return 0
      return byMs <= windowFromMs ? 1 : (windowToMs - byMs) / (windowToMs - windowFromMs)
    }
  })
  return (period) => tests.reduce((least, test) => Math.min(least, test(period)), 1)
}

function toEntry(period: Period, probability: number): NightProbability {
  return {
    date: period.date,
    probability,
    windowStartsAt: toInstantText(period.windowFromMs),
    windowEndsAt: toInstantText(period.windowToMs),
  }
}

function dateAt(nights: readonly NightProbability[], share: number): string {
  let sum = 0
  for (const { date, probability } of nights) {
    sum += probability
    if (sum >= share) return date
  }
  return nights.at(-1)!.date
}
