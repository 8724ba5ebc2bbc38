import { assertLevel } from './argument-error.ts'
import { type Cluster, type ClusterTest, clusterTest } from './cluster-test.ts'
import { DEFAULT_LEVEL } from './intervals.ts'
import { kaplanMeier, type SurvivalCurve } from './kaplan-meier.ts'
import { type LogRank, logRank, numbersAtRisk } from './log-rank.ts'

/**
 * What may be said of groups:
 * - `one_group`: there is nothing to compare with;
 * - `no_deaths`: nobody died while two groups were under watch;
 * - `too_few_clusters`: however they had differed, so few clusters could not have shown it;
 * - `differ`: the groups differ by more than their clusters do;
 * - `differ_by_animals_only`: they differ by more than single animals do, and not by more than their clusters do;
 * - `no_difference_shown`: which is not to say that there is none.
 */
export type Conclusion =
  | 'one_group'
  | 'no_deaths'
  | 'too_few_clusters'
  | 'differ'
  | 'differ_by_animals_only'
  | 'no_difference_shown'

export type ComparedGroup = {
  curve: SurvivalCurve
  clusters: number
  /** Alive and under watch just before each of the times asked for. */
  atRisk: number[]
  /** Deaths for each one that there would be, had all groups died alike; null where none was expected. */
  deathsAgainstExpected: number | null
}

export type GroupComparison = {
  groups: ComparedGroup[]
  conclusion: Conclusion
  /** Fewest and most deaths against those expected, by place in `groups`; null unless the groups differ. */
  best: number | null
  worst: number | null
  /** Of single animals: too sure of itself where animals of a cluster share a fate. Null with one group. */
  byAnimal: LogRank | null
  byCluster: ClusterTest | null
  /** Fewer deaths expected in some group than the log-rank test should have. */
  hasFewDeaths: boolean
}

/** Chance at which a difference is called one. common practice */
const SIGNIFICANT = 0.05
/** Under so many expected, a chi-square is no longer to be trusted: Cochran 1954, Biometrics 10:417-451, from memory. */
const FEWEST_EXPECTED = 5

function conclude(byAnimal: LogRank, byCluster: ClusterTest): Conclusion {
  if (byAnimal.degreesOfFreedom === 0) return 'no_deaths'
  if (byCluster.smallestPValue > SIGNIFICANT) return 'too_few_clusters'
  if (byCluster.pValue <= SIGNIFICANT) return 'differ'
  return byAnimal.pValue <= SIGNIFICANT ? 'differ_by_animals_only' : 'no_difference_shown'
}

/** Places of the smallest and the largest of the ratios that are known. */
function extremes(ratios: readonly (number | null)[]): { best: number | null; worst: number | null } {
  const known = ratios.flatMap((ratio, index) => (ratio === null ? [] : [{ ratio, index }]))
  known.sort((a, b) => a.ratio - b.ratio || a.index - b.index)
  return { best: known[0]?.index ?? null, worst: known.at(-1)?.index ?? null }
}

/**
 * Groups of clusters side by side: survival curves with Greenwood bands, numbers at risk, the log-rank test, the same
 * with the cluster as the unit, and which of the two may be believed.
 * @param times at which numbers at risk are wanted, in the unit of the observations, in order.
 * @throws ArgumentError for no groups, an empty group or cluster, or a number that is negative or missing.
 */
export function compareGroups({
  groups,
  times = [],
  level = DEFAULT_LEVEL,
}: {
  groups: readonly (readonly Cluster[])[]
  times?: readonly number[]
  level?: number
}): GroupComparison {
  assertLevel(level)
  const observations = groups.map((clusters) => clusters.flat())
  const byAnimal = groups.length > 1 ? logRank(observations) : null
  const byCluster = groups.length > 1 ? clusterTest(groups) : null
  const ratios = groups.map((_, index) => {
    const expected = byAnimal?.expected[index] ?? 0
    return expected > 0 ? byAnimal!.observed[index]! / expected : null
  })
  const conclusion = byAnimal && byCluster ? conclude(byAnimal, byCluster) : 'one_group'
  const isDifferent = conclusion === 'differ' || conclusion === 'differ_by_animals_only'
  return {
    groups: groups.map((clusters, index) => ({
      curve: kaplanMeier(observations[index]!, { level }),
      clusters: clusters.length,
      atRisk: numbersAtRisk(observations[index]!, times),
      deathsAgainstExpected: ratios[index] ?? null,
    })),
    conclusion,
    ...(isDifferent ? extremes(ratios) : { best: null, worst: null }),
    byAnimal,
    byCluster,
    hasFewDeaths: byAnimal?.expected.some((expected) => expected < FEWEST_EXPECTED) ?? false,
  }
}
