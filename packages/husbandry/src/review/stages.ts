import type { Id, PlainDate, SurvivalStageName, SurvivalStageStatus } from '@fryward/shared'
import { addDays, daysBetween } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import { factList } from '../snapshot/live-snapshot.ts'
import { findSpecies } from '../species/index.ts'
import { clutchState } from '../state/clutch-state.ts'
import { type BroodBook, hatchesOf, isFollowed, leavesAlive, nightsOf } from './brood-book.ts'
import type { Brood } from './broods.ts'
import { type Counted, countedOf, exactly, shifted, together } from './counting-error.ts'
import { dateIn, type ReviewRoom } from './review-room.ts'

/** How many reached a stage, as far as anybody wrote it down; ends that nobody can know are null, never guessed. */
export type Reached = {
  stage: SurvivalStageName
  status: SurvivalStageStatus
  on: PlainDate | null
  atLeast: number | null
  atMost: number | null
  /** Where both ends are one: how far its counting may be off. */
  counted: Counted | null
  /** Of the larvae that hatched, those that nobody watched further: left with their parents, or put among others. */
  removed: number
}

/** The young of most species here have eaten by then or are dead; the trade's first mark. common practice */
export const FIRST_MARK_DAYS = 5
/** No egg of any species here takes two months: older and not hatched, nobody ever said. */
const FORGOTTEN_DAYS = 60

type Asked = { room: ReviewRoom; brood: Brood; book: BroodBook }
type Ends = Pick<Reached, 'atLeast' | 'atMost' | 'counted'>

const unknown: Ends = { atLeast: null, atMost: null, counted: null }
const known = (counted: Counted): Ends => ({ atLeast: counted.number, atMost: counted.number, counted })

/** Every stage of a brood, in order; species whose young are born settled have no metamorphosis. */
export function reachedStages(asked: Asked): Reached[] {
  const { brood } = asked
  const laid = laidStage(asked)
  const hatched = hatchedStage(asked)
  const species = findSpecies(brood.clutches[0]?.species ?? '')
  const names = species?.larvalDuration === null ? lateStages.filter((name) => name !== 'metamorphosis') : lateStages
  const late = names.map((stage) => lateStage(stage, { asked, hatched }))
  return [laid, hatched, ...late]
}

const lateStages = ['first_feed', 'day_5', 'metamorphosis', 'settled', 'placed'] as const
type LateStage = (typeof lateStages)[number]

function laidStage({ room, brood }: Asked): Reached {
  const on = dateIn(room, brood.clutches[0]?.spawnedAt ?? '')
  const eggs = brood.clutches.map(({ id }) => eggsLaid(room, id))
  const told = eggs.filter((number) => number !== null)
  const ends = told.length === eggs.length ? known(together(told)) : unknown
  return { stage: 'laid', status: 'reached', on, ...ends, removed: 0 }
}

/** As counted by the day after they were laid, else as first written down, else as first counted at all. */
function eggsLaid(room: ReviewRoom, clutchId: Id): Counted | null {
  const spawning = (factList(room, `spawning ${clutchId}`) as readonly FactOf<'spawning'>[]).at(-1)
  const counts = (factList(room, `count ${clutchId}`) as readonly FactOf<'count'>[]).filter(
    ({ data }) => data.of === 'eggs',
  )
  const first = counts[0]
  const isEarly = first && spawning && daysBetween(dateIn(room, spawning.at), dateIn(room, first.at)) <= 1
  if (first && (isEarly || spawning?.data.eggs === undefined)) return countedOf('eggs', first.data.animals)
  return spawning?.data.eggs === undefined ? null : countedOf('eggs', [spawning.data.eggs])
}

function hatchedStage(asked: Asked): Reached {
  const { room, brood } = asked
  const base = { stage: 'hatched' as const, on: null, ...unknown, removed: 0 }
  const states = new Set(brood.clutches.map((clutch) => clutchState(room, clutch)))
  if (states.has('hatched')) return hatchedFrom(asked)
  if (states.has('lost')) return { ...base, status: 'reached', ...known(exactly(0)) }
  if (states.has('moved')) return { ...base, status: 'not_followed' }
  const laidOn = dateIn(room, brood.clutches[0]?.spawnedAt ?? '')
  return { ...base, status: daysBetween(laidOn, room.today) > FORGOTTEN_DAYS ? 'unknown' : 'not_yet' }
}

/** All larvae of all its nights; unknown where of one night or tank nobody said how many. */
function hatchedFrom({ room, brood }: Asked): Reached {
  const hatches = hatchesOf({ room, brood })
  const nights = nightsOf(hatches)
  const on = nights[0]?.on ?? null
  const isTold = nights.every(({ told }) => told.length > 0)
  const larvae = nights.flatMap(({ told }) => told.map((number) => countedOf('larvae', [number])))
  const ends = isTold ? known(together(larvae)) : unknown
  // Left with their parents, or put among others, they are watched no further.
  const left = hatches.reduce((sum, hatch) => (isFollowed(brood, hatch) ? sum : sum + (hatch.data.larvae ?? 0)), 0)
  return { stage: 'hatched', status: 'reached', on, ...ends, removed: left }
}

type LateAsked = { asked: Asked; hatched: Reached }

function lateStage(stage: LateStage, { asked, hatched }: LateAsked): Reached {
  const { book, room } = asked
  const base = { stage, on: null, ...unknown, removed: 0 }
  if (hatched.status !== 'reached') return { ...base, status: hatched.status }
  if (hatched.atMost === 0) return { ...base, status: 'reached', ...known(exactly(0)) }
  // Not one larva of it went into a batch, or only into one that held others by then.
  if (book.bornOn === null || asked.brood.vessels.length === 0) return { ...base, status: 'not_followed' }
  if (stage === 'settled') return settledStage(asked)
  if (stage === 'placed') return placedStage(asked)
  const on = dateOf(stage, asked)
  if (on !== null) {
    if (on > room.today) return { ...base, status: 'not_yet' }
    if (goneBefore(asked, on)) return { ...base, status: 'not_followed' }
    // Fed on the evening of the hatch already, they are those of the morning after.
    const isOfTheNight = on < book.bornOn
    return { ...base, on, ...statusOf(endsOn(book, isOfTheNight ? book.bornOn : on)) }
  }
  return undated(stage, asked)
}

const statusOf = (ends: Ends): Ends & { status: SurvivalStageStatus } => ({
  ...ends,
  status: ends.atLeast === null && ends.atMost === null ? 'unknown' : 'reached',
})

function dateOf(stage: 'first_feed' | 'day_5' | 'metamorphosis', { room, brood, book }: Asked): PlainDate | null {
  const batches = new Set(brood.vessels.filter(({ kind }) => kind === 'larval_batch').map(({ id }) => id))
  if (stage === 'day_5') return book.bornOn && addDays(book.bornOn, FIRST_MARK_DAYS)
  if (stage === 'first_feed') {
    const fed = room.meals.filter(({ batchId, food }) => batches.has(batchId) && isAnimalFood(food))
    return fed.map(({ firstAt }) => dateIn(room, firstAt)).sort()[0] ?? null
  }
  const looks = [...batches].flatMap((id) => factList(room, `observation ${id}`) as readonly FactOf<'observation'>[])
  const seen = looks.filter(({ data }) => data.signs.includes('settled')).map(({ at }) => at)
  return seen.length > 0 ? dateIn(room, seen.sort()[0] ?? '') : null
}

const isAnimalFood = (food: string): boolean => ['rotifers', 'copepods', 'artemia', 'dry', 'frozen'].includes(food)

/** A stage that nobody dated: what came after it tells that some got so far, and an empty tank that no more will. */
function undated(stage: LateStage, { room, book }: Asked): Reached {
  const settled = book.settlings.reduce((sum, { number }) => sum + number, 0)
  const now = book.numberOn(room.today)
  const isOver = now !== null && now.number === 0
  const base = { stage, on: null, counted: null, removed: 0 }
  if (settled > 0) return { ...base, status: 'reached', atLeast: settled, atMost: null }
  if (isOver && hasLeftAlive(book)) return { ...base, status: 'not_followed', ...unknown }
  if (isOver && stage === 'metamorphosis') return { ...base, status: 'reached', ...known(exactly(0)) }
  return { ...base, ...unknown, status: isOver ? 'unknown' : 'not_yet' }
}

const hasLeftAlive = (book: BroodBook) => book.departures.some((departure) => leavesAlive(departure))

/** The last of them had left alive before this date, for where nobody can follow them. */
function goneBefore({ book }: Asked, on: PlainDate): boolean {
  const last = book.departures.findLast((each) => each.on <= on)
  return book.numberOn(on)?.number === 0 && last !== undefined && last.kind !== 'loss'
}

/**
 * How many were alive at the end of a date: as counted then; else at most what the book said, and at least those whom
 * somebody saw later, alive or dead.
 */
export function endsOn(book: BroodBook, on: PlainDate): Ends {
  const then = book.numberOn(on)
  if (then && book.countedOn.includes(on)) return known(then)
  const next = book.countedOn.find((date) => date > on && book.numberOn(date) !== null)
  const seen = book.departures
    .filter((each) => each.on > on && (next === undefined || each.on <= next))
    .reduce((sum, { number }) => sum + number, 0)
  const there = seen + (next === undefined ? 0 : (book.numberOn(next)?.number ?? 0))
  // Whoever hatched in between was not there yet; where nobody said how many did, they may be all of them.
  const come = book.nights
    .filter((night) => night.on > on && (next === undefined || night.on <= next))
    .flatMap(({ told }) => (told.length > 0 ? told : [Number.POSITIVE_INFINITY]))
    .reduce((sum, number) => sum + number, 0)
  const atLeast = Math.max(0, there - come)
  if (then === null) return { atLeast: atLeast > 0 ? atLeast : null, atMost: null, counted: null }
  const atMost = Math.max(then.number, atLeast)
  return { atLeast, atMost, counted: atLeast === atMost ? shifted(then, atMost) : null }
}

/** Those moved to grow-out, for they are counted on the way; more may follow while some are left in a larval tank. */
function settledStage({ room, brood, book }: Asked): Reached {
  const moved = book.settlings.reduce((sum, { number }) => sum + number, 0)
  const on =
    book.settlings
      .map((settling) => settling.on)
      .sort()
      .at(-1) ?? null
  const base = { stage: 'settled' as const, on, removed: 0 }
  const left = leftInBatches({ room, brood, book })
  if (left === 0) {
    if (moved === 0 && hasLeftAlive(book)) return { ...base, status: 'not_followed', ...unknown }
    return { ...base, status: 'reached', ...known(exactly(moved)) }
  }
  if (moved === 0) return { ...base, status: 'not_yet', ...unknown }
  return { ...base, status: 'so_far', atLeast: moved, atMost: left === null ? null : moved + left, counted: null }
}

/** Larvae that are still in the larval tanks by the book. */
function leftInBatches({ room, brood, book }: Asked): number | null {
  const batches = brood.vessels.filter(({ kind }) => kind === 'larval_batch')
  return book.numberIn(batches, room.today)?.number ?? null
}

/** Those that left as grown young, to others or into the room's own broodstock. */
function placedStage({ room, book }: Asked): Reached {
  const gone = book.departures.filter(({ kind }) => kind === 'placed' || kind === 'kept')
  const number = gone.reduce((sum, each) => sum + each.number, 0)
  const base = { stage: 'placed' as const, on: gone.at(-1)?.on ?? null, removed: 0 }
  const left = book.numberOn(room.today)?.number ?? null
  if (left === 0) {
    const mixed = book.departures.some(({ kind }) => kind === 'mixed' || kind === 'moved')
    if (mixed && number === 0) return { ...base, status: 'not_followed', ...unknown }
    return { ...base, status: mixed ? 'so_far' : 'reached', ...known(exactly(number)) }
  }
  if (number === 0) return { ...base, status: 'not_yet', ...unknown }
  return { ...base, status: 'so_far', ...known(exactly(number)) }
}
