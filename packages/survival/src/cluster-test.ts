import { deathsByGroup } from './log-rank.ts'
import type { Observation } from './observation.ts'

/** Animals that shared a fate, such as the young of one clutch: they live and die together more than by chance. */
export type Cluster = readonly Observation[]

export type ClusterTest = {
  /** Share of all ways to deal the clusters out to the groups that differ at least as much as what was seen. */
  pValue: number
  /** The smallest value that so few clusters could ever give. */
  smallestPValue: number
  /** Ways that were looked at. */
  arrangements: number
  /** True when those are all there are; else they were drawn. */
  isExact: boolean
}

/** Up to so many ways all are tried; more are drawn from. */
const ALL_UP_TO = 20_000
/** Drawn p-values come in steps of 1 in 10,000. */
const DRAWS = 9_999
const SEED = 20_261

/** A cluster's deaths, seen and expected from the risk sets of all clusters together, which no dealing out changes. */
type Deaths = { observed: number; expected: number }

/** Sum over groups of (O - E)^2 / E: the log-rank statistic that needs no covariance (Peto & Peto 1972). */
function statistic(groups: readonly Deaths[]): number {
  return groups.reduce(
    (sum, { observed, expected }) => (expected > 0 ? sum + (observed - expected) ** 2 / expected : sum),
    0,
  )
}

/** How many ways there are to deal out groups of these sizes: the multinomial coefficient. */
function waysToDeal(sizes: readonly number[]): number {
  let dealt = 0
  let ways = 1
  for (const size of sizes)
    for (let taken = 1; taken <= size; taken += 1) {
      dealt += 1
      ways *= dealt / taken
    }
  return Math.round(ways)
}

/** Groups of one size may change places, and the difference is the same. */
function waysAlike(sizes: readonly number[]): number {
  const seen = new Map<number, number>()
  return sizes.reduce((ways, size) => {
    const times = (seen.get(size) ?? 0) + 1
    seen.set(size, times)
    return ways * times
  }, 1)
}

function dealAll(clusters: readonly Deaths[], sizes: readonly number[], see: (value: number) => void): void {
  const left = [...sizes]
  const groups = sizes.map(() => ({ observed: 0, expected: 0 }))
  const deal = (next: number): void => {
    const cluster = clusters[next]
    if (cluster === undefined) {
      see(statistic(groups))
      return
    }
    groups.forEach((group, index) => {
      if (left[index] === 0) return
      left[index]! -= 1
      const { observed, expected } = group
      group.observed = observed + cluster.observed
      group.expected = expected + cluster.expected
      deal(next + 1)
      group.observed = observed
      group.expected = expected
      left[index]! += 1
    })
  }
  deal(0)
}

/** Uniform in (0, 1): the multiplicative generator of Park, Miller & Stockmeyer 1993, Commun. ACM 36(7):105-110. */
function uniforms(seed: number): () => number {
  const modulus = 2 ** 31 - 1
  let state = seed
  return () => {
    state = (state * 48_271) % modulus
    return state / modulus
  }
}

function dealOften(clusters: readonly Deaths[], sizes: readonly number[], see: (value: number) => void): void {
  const uniform = uniforms(SEED)
  const groupOf = Uint16Array.from(sizes.flatMap((size, group) => Array.from({ length: size }, () => group)))
  const groups = sizes.map(() => ({ observed: 0, expected: 0 }))
  for (let draw = 0; draw < DRAWS; draw += 1) {
    shuffle(groupOf, uniform)
    for (const group of groups) {
      group.observed = 0
      group.expected = 0
    }
    clusters.forEach(({ observed, expected }, index) => {
      const group = groups[groupOf[index]!]!
      group.observed += observed
      group.expected += expected
    })
    see(statistic(groups))
  }
}

/** Every order as likely as any other (Durstenfeld 1964, Commun. ACM 7:420). */
function shuffle(list: Uint16Array, uniform: () => number): void {
  for (let place = list.length - 1; place > 0; place -= 1) {
    const other = Math.floor(uniform() * (place + 1))
    const kept = list[place]!
    list[place] = list[other]!
    list[other] = kept
  }
}

const sumOf = (clusters: readonly Deaths[]): Deaths => ({
  observed: clusters.reduce((sum, { observed }) => sum + observed, 0),
  expected: clusters.reduce((sum, { expected }) => sum + expected, 0),
})

/**
 * Test that survival is the same in every group, with the cluster as what is dealt out: a log-rank statistic against all
 * ways to deal the clusters out (Fisher 1935, The Design of Experiments), or 9,999 seeded draws of them, where p is
 * (hits + 1) / (draws + 1) (Phipson & Smyth 2010, Stat. Appl. Genet. Mol. Biol. 9:39). Animals of a cluster may hang
 * together as much as they like.
 * @param groups clusters by group; none of them empty.
 * @throws ArgumentError for an empty cluster, or a number that is negative or missing.
 */
export function clusterTest(groups: readonly (readonly Cluster[])[]): ClusterTest {
  const sizes = groups.map((clusters) => clusters.length)
  const { observed, expected } = deathsByGroup(groups.flat())
  const clusters = observed.map((deaths, index) => ({ observed: deaths, expected: expected[index]! }))
  let from = 0
  const seen = statistic(
    sizes.map((size) => {
      const group = clusters.slice(from, from + size)
      from += size
      return sumOf(group)
    }),
  )
  const ways = waysToDeal(sizes)
  const isExact = ways <= ALL_UP_TO
  // Sums in another order round otherwise.
  const slack = 1e-9 * Math.max(1, seen)
  let arrangements = 0
  let hits = 0
  const see = (value: number) => {
    arrangements += 1
    if (value >= seen - slack) hits += 1
  }
  if (isExact) {
    dealAll(clusters, sizes, see)
    return { pValue: hits / arrangements, smallestPValue: waysAlike(sizes) / ways, arrangements, isExact }
  }
  dealOften(clusters, sizes, see)
  return { pValue: (hits + 1) / (arrangements + 1), smallestPValue: 1 / (arrangements + 1), arrangements, isExact }
}
