/*
 * Formulas of the survival review once more, each by its definition and the slowest way there is: intervals are searched for
 * by halving, sums are taken over animals one by one, and every way to deal clutches out is tried.
 */
type Timed = { time: number; kind: string }
type Interval = { lower: number; upper: number }

/** The normal deviate of 95 %. */
const z = 1.959963984540054

/** Where a function that falls from above 0 to below it is 0, in (0, 1). */
function rootOf(falling: (p: number) => number): number {
  let [lower, upper] = [0, 1]
  for (let step = 0; step < 100; step += 1) {
    const middle = (lower + upper) / 2
    if (falling(middle) > 0) lower = middle
    else upper = middle
  }
  return (lower + upper) / 2
}

/** Shares from which what was seen is not further off than 1.96 of their own standard errors (Wilson 1927). */
export function wilson(share: number, of: number): Interval {
  const off = (p: number) => Math.abs(share - p) - z * Math.sqrt((p * (1 - p)) / of)
  return {
    lower: share === 0 ? 0 : rootOf((p) => (p < share ? off(p) : -1)),
    upper: share === 1 ? 1 : rootOf((p) => (p > share ? -off(p) : 1)),
  }
}

/** Chance of so many or fewer of `of`, by the binomial distribution. */
function upTo(most: number, of: number, p: number): number {
  let [term, sum] = [(1 - p) ** of, 0]
  for (let k = 0; k <= most; k += 1) {
    sum += term
    term *= ((of - k) / (k + 1)) * (p / (1 - p))
  }
  return sum
}

/** Shares under which what was seen, or what is further off, has a chance of a fortieth at least (Clopper & Pearson 1934). */
export const clopperPearson = (number: number, of: number): Interval => ({
  lower: number === 0 ? 0 : rootOf((p) => 0.025 - (1 - upTo(number - 1, of, p))),
  upper: number === of ? 1 : rootOf((p) => upTo(number, of, p) - 0.025),
})

/** As the review gives a share: exact up to thirty whole animals. */
export function shareOf(share: number, of: number): Interval & { share: number; of: number } {
  const number = Math.round(share * of)
  const isWhole = Math.abs(of - Math.round(of)) < 1e-9 && Math.abs(share * of - number) < 1e-9
  return { share, of, ...(isWhole && of <= 30 ? clopperPearson(number, Math.round(of)) : wilson(share, of)) }
}

const isDead = ({ kind }: Timed) => kind === 'dead'
const deathTimes = (animals: readonly Timed[]) =>
  [...new Set(animals.filter(isDead).map(({ time }) => time))].sort((a, b) => a - b)
export const atRisk = (animals: readonly Timed[], time: number) => animals.filter((each) => each.time >= time).length
const dyingAt = (animals: readonly Timed[], time: number) =>
  animals.filter((each) => isDead(each) && each.time === time).length

/** Kaplan & Meier's share and Greenwood's band on the log scale, death by death. */
export function curveOf(animals: readonly Timed[]) {
  let [share, greenwood, upper] = [1, 0, 1]
  return deathTimes(animals).map((time) => {
    const [there, dead] = [atRisk(animals, time), dyingAt(animals, time)]
    share *= 1 - dead / there
    greenwood += dead / (there * (there - dead))
    const band = Math.exp(z * Math.sqrt(greenwood))
    // Where the last one dies there is no band: it may be as many as before.
    const lower = there === dead ? 0 : share / band
    upper = there === dead ? upper : Math.min(1, share * band)
    return { ageDays: time, atRisk: there, deaths: dead, share, lower, upper }
  })
}

/** Deaths of each that there would be, had all died alike. */
export function expectedDeaths(groups: readonly (readonly Timed[])[]): number[] {
  const all = groups.flat()
  return groups.map((group) =>
    deathTimes(all).reduce((sum, time) => sum + (dyingAt(all, time) * atRisk(group, time)) / atRisk(all, time), 0),
  )
}

export const observedDeaths = (groups: readonly (readonly Timed[])[]): number[] =>
  groups.map((group) => group.filter(isDead).length)

/** Mantel's chi-square of two groups, with the hypergeometric variance, and its chance by the area under the normal curve. */
export function logRankOfTwo([a, b]: readonly [readonly Timed[], readonly Timed[]]) {
  const all = [...a, ...b]
  const variance = deathTimes(all).reduce((sum, time) => {
    const [n, d, share] = [atRisk(all, time), dyingAt(all, time), atRisk(a, time) / atRisk(all, time)]
    return n > 1 ? sum + (d * share * (1 - share) * (n - d)) / (n - 1) : sum
  }, 0)
  const off = observedDeaths([a, b])[0]! - expectedDeaths([a, b])[0]!
  return { chiSquare: off ** 2 / variance, pValue: 1 - normalArea(Math.abs(off) / Math.sqrt(variance)) }
}

/** Under the normal curve from -x to x, in small steps (Simpson). */
function normalArea(x: number): number {
  const steps = 2000
  const height = (at: number) => Math.exp(-(at ** 2) / 2) / Math.sqrt(2 * Math.PI)
  let sum = height(0) + height(x)
  for (let step = 1; step < steps; step += 1) sum += (step % 2 === 1 ? 4 : 2) * height((x * step) / steps)
  return (2 * sum * x) / steps / 3
}

/** Of all ways to deal clutches out to two groups of these sizes, how many differ as much, and how few ever could. */
export function dealtOut([a, b]: readonly [readonly (readonly Timed[])[], readonly (readonly Timed[])[]]) {
  const clutches = [...a, ...b]
  const [observed, expected] = [observedDeaths(clutches), expectedDeaths(clutches)]
  const apart = (isFirst: (index: number) => boolean) =>
    [true, false].reduce((sum, side) => {
      const own = (each: number[]) => each.reduce((all, one, index) => (isFirst(index) === side ? all + one : all), 0)
      return own(expected) > 0 ? sum + (own(observed) - own(expected)) ** 2 / own(expected) : sum
    }, 0)
  const seen = apart((index) => index < a.length)
  const ways = Array.from({ length: 2 ** clutches.length }, (_, bits) => (index: number) => ((bits >> index) & 1) === 1)
  const fair = ways.filter((way) => clutches.filter((_, index) => way(index)).length === a.length)
  return {
    pValue: fair.filter((way) => apart(way) >= seen - 1e-9).length / fair.length,
    smallestPValue: (a.length === b.length ? 2 : 1) / fair.length,
  }
}
