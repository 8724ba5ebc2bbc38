import type { SurvivalStageName } from '@fryward/shared'
import { type Share, type StageCount, stageCounts } from '@fryward/survival'
import { type BroodBook, type Departure, leavesAlive } from './brood-book.ts'
import type { ReviewRoom } from './review-room.ts'
import type { Reached } from './stages.ts'

type Asked = { room: ReviewRoom; book: BroodBook }

/**
 * Stages with a count of their own. Fed by the day of the hatch, the larvae are those of its morning's one number:
 * a share of it would carry the error of one count twice.
 */
function ownCounts(stages: readonly Reached[]): Reached[] {
  const hatchedOn = stages.find(({ stage }) => stage === 'hatched')?.on ?? ''
  const isSameCount = ({ stage, on }: Reached) => stage === 'first_feed' && on !== null && on <= hatchedOn
  return stages.filter((stage) => stage.counted !== null && !isSameCount(stage))
}

/** Who was taken away alive between one known stage and the next: watched for a part of the way, and not dead. */
function withRemoved(stages: readonly Reached[], asked: Asked): Reached[] {
  const known = ownCounts(stages)
  return stages.map((stage) => {
    const next = known[known.indexOf(stage) + 1]
    if (!known.includes(stage) || !next) return stage
    const passed = stages.slice(stages.indexOf(stage), stages.indexOf(next))
    const unraised = passed.reduce((sum, { removed }) => sum + removed, 0)
    return { ...stage, removed: unraised + removedBetween(asked, { stage, next }) }
  })
}

type Step = { stage: Reached; next: Reached }

function removedBetween({ room, book }: Asked, step: Step): number {
  const gone = book.departures.filter((each) => leavesAlive(each) && isOnTheWay(each, step))
  if (step.next.stage !== 'placed') return sumOf(gone)
  const others = gone.filter(({ kind }) => kind !== 'placed' && kind !== 'kept')
  return sumOf(others) + (book.numberOn(room.today)?.number ?? 0)
}

/** Settled are all who ever were, however long the first were before the last; other stages are told by their day. */
function isOnTheWay({ on, hasSettled }: Departure, { stage, next }: Step): boolean {
  if (next.stage === 'hatched') return false
  // Larvae of the first morning were counted before any left, all others at the end of their day.
  const isSince = stage.stage === 'hatched' || on > (stage.on ?? '')
  if (next.stage === 'settled') return isSince && !hasSettled
  if (stage.stage === 'settled') return hasSettled
  return isSince && (next.stage === 'placed' || on <= (next.on ?? on))
}

const sumOf = (departures: readonly Departure[]) => departures.reduce((sum, { number }) => sum + number, 0)

/** Who was placed out of a larval tank was never among those that settled. */
const placedStraight = ({ book }: Asked): number =>
  sumOf(book.departures.filter(({ kind, hasSettled }) => !hasSettled && (kind === 'placed' || kind === 'kept')))

export type StageShares = {
  fromStage: SurvivalStageName
  lost: number
  share: Share | null
  ofFirst: Share | null
  isAboveBook: boolean
}

/** The share of each known stage of the known one before it, and of the first, with intervals; unknown ones are stepped over. */
export function sharesOf(stages: readonly Reached[], asked: Asked): Map<SurvivalStageName, StageShares> {
  const known = ownCounts(withRemoved(stages, asked))
  const straight = known.some(({ stage }) => stage === 'settled') ? placedStraight(asked) : 0
  const counts = fitted(
    known.flatMap(({ stage, counted, removed }) => {
      if (!counted) return []
      const animals = stage === 'placed' ? counted.number - straight : counted.number
      return [{ stage, animals, standardError: counted.standardError, removed }]
    }),
  )
  const shares = new Map<SurvivalStageName, StageShares>()
  if (counts.length < 2) return shares
  stageCounts({ stages: counts }).stages.forEach((result, index) => {
    const from = counts[index - 1]
    if (!from) return
    const { lost, fromPrevious: share, fromFirst: ofFirst, isAboveBook } = result
    shares.set(counts[index]!.stage, { fromStage: from.stage, lost, share, ofFirst, isAboveBook })
  })
  return shares
}

type NamedCount = Required<StageCount> & { stage: SurvivalStageName }

/** Heads that were counted as more than could be left had been there all the same: the earlier number was short by them. */
function fitted(counts: readonly NamedCount[]): NamedCount[] {
  const fit = counts.map((count) => ({ ...count }))
  for (let index = fit.length - 2; index >= 0; index -= 1) {
    const [from, next] = [fit[index]!, fit[index + 1]!]
    const short = next.animals + from.removed - from.animals
    if (short > 0) from.standardError = Math.max(from.standardError, short)
  }
  return fit
}
