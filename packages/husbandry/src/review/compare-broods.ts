import {
  type CareKind,
  type ComparedBy,
  careKinds,
  type LeftOutReason,
  type PlainDate,
  type SurvivalComparison,
  seasons,
} from '@fryward/shared'
import { type Cluster, compareGroups, type GroupComparison, observationsFromBook } from '@fryward/survival'
import type { BroodReview } from './brood-review.ts'

/** The group that a clutch falls into, and its young as the survival package reads them. */
type Placed = { key: string; young: Cluster }
type Member = Placed & { review: BroodReview }

export type BroodComparison = Omit<SurvivalComparison, 'groups' | 'by'> & {
  groups: Omit<SurvivalComparison['groups'][number], 'name'>[]
}

/** Side by side stand the largest: more nobody can tell apart, and a test of many has little to find. common practice */
const MOST_GROUPS = 12
/** Days under a chart of a phone's width. */
const DAYS_SHOWN = 6

/**
 * Broods in groups, with curves from the hatch on, numbers at risk, the log-rank test of animals and of clutches, and what
 * may be concluded. Broods that no number was ever written of, or that were not counted again, tell nothing of deaths and
 * are left out, as are those that fall into two groups at once.
 */
export function compareBroods(reviews: readonly BroodReview[], by: ComparedBy): BroodComparison {
  const members: Member[] = []
  const leftOut = new Map<LeftOutReason, number>()
  for (const review of reviews) {
    const placed = placeOf(review, by)
    if ('key' in placed) members.push({ ...placed, review })
    else leftOut.set(placed.reason, (leftOut.get(placed.reason) ?? 0) + review.brood.clutches.length)
  }
  const { groups, others } = largestGroups(members)
  if (others > 0) leftOut.set('too_many_groups', others)
  const keys = groups.map(([first]) => first?.key ?? '')
  const days = daysToTell(groups.flat())
  const compared =
    groups.length > 0
      ? compareGroups({ groups: groups.map((group) => group.map(({ young }) => young)), times: days })
      : null
  return {
    cares: caresOf(reviews),
    days,
    groups: groups.map((group, index) => toGroup(keys[index]!, { group, compared: compared!.groups[index]! })),
    ...toConclusion(compared, keys),
    leftOut: [...leftOut]
      .map(([reason, clutches]) => ({ reason, clutches }))
      .sort((a, b) => (a.reason < b.reason ? -1 : 1)),
  }
}

const caresOf = (reviews: readonly BroodReview[]): CareKind[] => {
  const all = new Set(reviews.flatMap(({ brood }) => brood.clutches.map(({ care }) => care)))
  return careKinds.filter((care) => all.has(care))
}

/** Groups by their keys, as many as may stand side by side, and how many clutches the rest have. */
function largestGroups(members: readonly Member[]): { groups: Member[][]; others: number } {
  const byKey = new Map<string, Member[]>()
  for (const member of members) byKey.set(member.key, [...(byKey.get(member.key) ?? []), member])
  const bySize = [...byKey].sort(([a, one], [b, two]) => two.length - one.length || (a < b ? -1 : 1))
  const kept = bySize.slice(0, MOST_GROUPS).sort(([a], [b]) => (a < b ? -1 : 1))
  const others = bySize.slice(MOST_GROUPS).flatMap(([, group]) => group)
  return {
    groups: kept.map(([, group]) => group),
    others: others.reduce((sum, { review }) => sum + review.brood.clutches.length, 0),
  }
}

function placeOf(review: BroodReview, by: ComparedBy): Placed | { reason: LeftOutReason } {
  const { book, ledger } = review
  if (book.bornOn === null) return { reason: 'not_hatched' }
  if (!ledger) return { reason: 'not_counted' }
  const young = observationsFromBook({ entries: ledger })
  // A single number, and neither a count nor an empty tank that closes it: who lived is not known.
  const isClosed = review.numberNow === 0 || ledger.filter(({ kind }) => kind === 'count').length > 1
  if (young.length === 0 || !isClosed) return { reason: 'not_counted' }
  const keys = keysOf(review, { by, bornOn: book.bornOn })
  const [key] = keys
  if (key === undefined) return { reason: 'not_known' }
  return keys.length > 1 ? { reason: 'several' } : { key, young }
}

function keysOf(review: BroodReview, { by, bornOn }: { by: ComparedBy; bornOn: PlainDate }): string[] {
  const { clutches } = review.brood
  if (by === 'pair') return [...new Set(clutches.map(({ pairId }) => pairId))]
  if (by === 'species') return [...new Set(clutches.map(({ species }) => species))]
  if (by === 'culture') return review.cultureIds
  if (by === 'tank') return review.tankIds
  if (by === 'protocol') return review.protocol.length > 0 ? [review.protocol.join(' ')] : []
  // Where no food of those days was written down, nobody can say what was not given.
  const isWritten = review.protocol.length > 0
  if (by === 'green_water') return isWritten ? [review.protocol.includes('green_water') ? 'with' : 'without'] : []
  if (by === 'artemia_day') return isWritten ? [review.artemiaDay === null ? 'later' : `${review.artemiaDay}`] : []
  const month = Number(bornOn.slice('YYYY-'.length, 'YYYY-MM'.length))
  return [seasons[Math.floor((month % 12) / 3)] ?? seasons[0]]
}

/** Six days or fewer, in whole steps from 0 to the last on which anybody was watched. */
function daysToTell(members: readonly Member[]): number[] {
  const last = Math.ceil(Math.max(0, ...members.flatMap(({ young }) => young.map(({ time }) => time))))
  const step = [1, 2, 5, 10, 20, 50, 100, 200, 500].find((size) => last / size <= DAYS_SHOWN) ?? 1000
  return Array.from({ length: Math.floor(last / step) + 1 }, (_, index) => index * step)
}

function toGroup(
  key: string,
  { group, compared }: { group: readonly Member[]; compared: GroupComparison['groups'][number] },
): BroodComparison['groups'][number] {
  const { curve, atRisk, deathsAgainstExpected } = compared
  return {
    key,
    clutches: group.reduce((sum, { review }) => sum + review.brood.clutches.length, 0),
    animals: Math.round(curve.animals),
    deaths: Math.round(curve.events),
    curve: curve.steps.map(({ time, atRisk: there, events, survival, lower, upper }) => ({
      ...{ ageDays: time, atRisk: there, deaths: events, share: survival, lower, upper },
    })),
    followedToDay: Math.max(...group.flatMap(({ young }) => young.map(({ time }) => time))),
    atRisk,
    medianDays: curve.median,
    deathsAgainstExpected,
  }
}

function toConclusion(
  compared: GroupComparison | null,
  keys: readonly string[],
): Pick<BroodComparison, 'conclusion' | 'best' | 'worst' | 'hasFewDeaths' | 'byAnimal' | 'byClutch'> {
  if (!compared)
    return { conclusion: 'one_group', best: null, worst: null, hasFewDeaths: false, byAnimal: null, byClutch: null }
  const { conclusion, best, worst, hasFewDeaths, byAnimal, byCluster } = compared
  const keyOf = (index: number | null) => (index === null ? null : (keys[index] ?? null))
  return {
    conclusion: conclusion === 'too_few_clusters' ? 'too_few_clutches' : conclusion,
    best: keyOf(best),
    worst: keyOf(worst),
    hasFewDeaths,
    byAnimal: byAnimal && {
      chiSquare: byAnimal.chiSquare,
      degreesOfFreedom: byAnimal.degreesOfFreedom,
      pValue: byAnimal.pValue,
    },
    byClutch: byCluster,
  }
}
