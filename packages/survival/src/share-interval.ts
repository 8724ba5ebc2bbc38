import { clopperPearsonInterval, type Interval, normalDeviate, scoreInterval } from './intervals.ts'

/** A share, never without the number it rests on and its interval. */
export type Share = Interval & {
  share: number
  /** Animals that the share is of; not whole when some left on the way. */
  of: number
  level: number
  method: 'Clopper-Pearson' | 'Wilson' | 'Wilson, widened by counting error'
}

/** Up to so many animals the exact interval is shown: common practice, it is never too narrow. */
const SMALL_NUMBER = 30

/**
 * Interval of a share of animals, widened when the counts are estimates: the two half-widths are squared and added on
 * the log scale (MOVER: Zou & Donner 2008, Stat. Med. 27:1693-1702), so that exact counts give the plain interval.
 * `relativeError` is the standard error of the log of the share that counting alone brings.
 */
export function shareInterval({
  share,
  of,
  relativeError,
  level,
}: {
  share: number
  of: number
  relativeError: number
  level: number
}): Share {
  const survivors = share * of
  const isWhole = Number.isInteger(of) && Math.abs(survivors - Math.round(survivors)) < 1e-9
  if (relativeError === 0 && of <= SMALL_NUMBER && isWhole) {
    const exact = clopperPearsonInterval({ successes: Math.round(survivors), trials: of, level })
    return { share, of, level, ...exact, method: 'Clopper-Pearson' }
  }
  const plain = scoreInterval({ share, trials: of, level })
  if (relativeError === 0) return { share, of, level, ...plain, method: 'Wilson' }
  const counting = normalDeviate(level) * relativeError
  const lower = share === 0 ? 0 : share * Math.exp(-Math.hypot(Math.log(share / plain.lower), counting))
  const upper =
    share === 0
      ? plain.upper * Math.exp(counting)
      : share * Math.exp(Math.hypot(Math.log(plain.upper / share), counting))
  return { share, of, level, lower, upper: Math.min(1, upper), method: 'Wilson, widened by counting error' }
}

/**
 * How many animals a share would have been of, had nobody left on the way: share (1 - share) / Greenwood's variance
 * (Dorey & Korn 1987, Stat. Med. 6:679-687). At 0 and 1 Greenwood's sum is infinite and 0, and says nothing: the fewest that
 * were at risk.
 */
export function effectiveNumber({
  share,
  greenwood,
  fewest,
}: {
  share: number
  greenwood: number
  fewest: number
}): number {
  if (greenwood === 0 || greenwood === Number.POSITIVE_INFINITY) return fewest
  const number = (1 - share) / (share * greenwood)
  // Where nobody left it is a whole number but for rounding.
  return Math.abs(number - Math.round(number)) < 1e-9 * number ? Math.round(number) : number
}
