import {
  type Food,
  type Id,
  type PlainDate,
  type ProtocolPart,
  protocolParts,
  type SurvivalStage,
} from '@fryward/shared'
import { type LedgerEntry, lifeTable, type Share } from '@fryward/survival'
import { addDays } from '../calendar/husbandry-day.ts'
import type { FactOf } from '../facts/fact.ts'
import { factList } from '../snapshot/live-snapshot.ts'
import { ageOn, type BroodBook, broodBook } from './brood-book.ts'
import { ledgerOf } from './brood-ledger.ts'
import type { Brood } from './broods.ts'
import { broodsOf } from './broods.ts'
import { dateIn, type Meals, type ReviewRoom } from './review-room.ts'
import { type StageShares, sharesOf } from './stage-shares.ts'
import { type Reached, reachedStages } from './stages.ts'
import { tankOn, tanksBetween } from './stays.ts'

/** One brood as the review shows it. Ids only; numbers are animals, dates those of the room. */
export type BroodReview = {
  brood: Brood
  book: BroodBook
  /** For curves and life tables; null while nobody has written a number down. */
  ledger: LedgerEntry[] | null
  spawnedOn: PlainDate
  stages: SurvivalStage[]
  losses: { cause: string | null; number: number }[]
  missing: number
  numberNow: number | null
  mixedOn: PlainDate | null
  /** In which its larvae spent the days that decide. */
  tankIds: Id[]
  /** In which the eggs of its first clutch were laid. */
  eggTankId: Id | null
  cultureIds: Id[]
  /** What it was fed in the days that decide, as far as anybody wrote it down. */
  protocol: ProtocolPart[]
  /** Day of life of the first Artemia in the days that decide; null where there was none by then. */
  artemiaDay: number | null
}

/** A brood's tank, its culture and its food are those of the days that decide; later it eats Artemia and dry food. common practice */
const FIRST_DAYS = 5

/** Every brood of a room, oldest first. */
export const reviewBroods = (room: ReviewRoom): BroodReview[] =>
  broodsOf(room).map((brood) => reviewBrood({ room, brood }))

/** The brood that a clutch is of; null for one that the room does not have, or that was none. */
export function reviewOfClutch(room: ReviewRoom, clutchId: Id): BroodReview | null {
  const brood = broodsOf(room).find(({ clutches }) => clutches.some(({ id }) => id === clutchId))
  return brood ? reviewBrood({ room, brood }) : null
}

export function reviewBrood({ room, brood }: { room: ReviewRoom; brood: Brood }): BroodReview {
  const book = broodBook({ room, brood })
  const ledger = ledgerOf({ room, brood }, book)
  const reached = reachedStages({ room, brood, book })
  const shares = sharesOf(reached, { room, book })
  const mixed = brood.vessels.flatMap(({ mixedAt }) => (mixedAt === null ? [] : [dateIn(room, mixedAt)])).sort()
  return {
    brood,
    book,
    ledger,
    spawnedOn: dateIn(room, brood.clutches[0]?.spawnedAt ?? ''),
    stages: reached.map((stage) => toStage(stage, { shares: shares.get(stage.stage), bornOn: book.bornOn })),
    losses: lossesByCause({ room, brood, book }),
    missing: ledger ? Math.round(lifeTable({ entries: ledger }).totals.lossesUnseen) : 0,
    numberNow: book.numberOn(room.today)?.number ?? null,
    mixedOn: mixed[0] ?? null,
    tankIds: tanksOf({ room, brood, book }, FIRST_DAYS),
    eggTankId: eggTankOf({ room, brood }),
    cultureIds: culturesOf({ room, brood, book }),
    protocol: protocolOf({ room, brood, book }),
    artemiaDay: artemiaDayOf({ room, brood, book }),
  }
}

function toStage(
  { stage, status, on, atLeast, atMost, counted }: Reached,
  { shares, bornOn }: { shares: StageShares | undefined; bornOn: PlainDate | null },
): SurvivalStage {
  return {
    ...{ stage, status, on, atLeast, atMost },
    ageDays: on === null || bornOn === null || on < bornOn ? null : ageOn(bornOn, on),
    interval: counted?.interval ?? null,
    fromStage: shares?.fromStage ?? null,
    lost: shares?.lost ?? null,
    share: shares?.share ? toShare(shares.share) : null,
    ofFirst: shares?.ofFirst ? toShare(shares.ofFirst) : null,
    isAboveBook: shares?.isAboveBook ?? false,
  }
}

const toShare = ({ share, lower, upper, of }: Share) => ({ share, lower, upper, of })

type Asked = { room: ReviewRoom; brood: Brood; book: BroodBook }

/** Eggs and young found dead, by what was written as the cause, most first. */
function lossesByCause({ room, brood, book }: Asked): BroodReview['losses'] {
  const eggs = eggLosses({ room, brood })
  const sums = new Map<string, { cause: string | null; number: number }>()
  for (const { cause, number } of [...eggs, ...book.departures.filter(({ kind }) => kind === 'loss')]) {
    const key = cause?.toLowerCase() ?? ''
    const sum = sums.get(key) ?? { cause, number: 0 }
    sums.set(key, { ...sum, number: sum.number + number })
  }
  return [...sums.values()].sort((a, b) => b.number - a.number || ((a.cause ?? '') < (b.cause ?? '') ? -1 : 1))
}

/** Eggs found dead or eaten, before any of them hatched. */
export const eggLosses = ({ room, brood }: Pick<Asked, 'room' | 'brood'>) =>
  brood.clutches.flatMap(({ id }) =>
    (factList(room, `loss ${id}`) as readonly FactOf<'loss'>[]).map(({ at, data }) => ({
      on: dateIn(room, at),
      number: data.number,
      cause: data.cause || null,
    })),
  )

const batchesOf = ({ brood }: Pick<Asked, 'brood'>): Set<Id> =>
  new Set(brood.vessels.filter(({ kind }) => kind === 'larval_batch').map(({ id }) => id))

/** Tanks that its batches were in for so many days from its birth on, in which they were then and not in which they are now. */
function tanksOf({ room, brood, book }: Asked, days: number): Id[] {
  const { bornOn } = book
  if (bornOn === null) return []
  const batches = batchesOf({ brood })
  const time = { from: bornOn, to: addDays(bornOn, days) }
  const own = room.batches.filter(({ id }) => batches.has(id))
  return [...new Set(own.flatMap((batch) => tanksBetween(room, batch, time)))]
}

/** All of them until today. */
export const tanksThroughLife = (room: ReviewRoom, { brood, book }: BroodReview): Id[] =>
  book.bornOn === null ? [] : tanksOf({ room, brood, book }, ageOn(book.bornOn, room.today))

/** The home of its pair on the day on which it was laid. */
function eggTankOf({ room, brood }: Pick<Asked, 'room' | 'brood'>): Id | null {
  const [clutch] = brood.clutches
  if (!clutch) return null
  return tankOn(room, { id: clutch.pairId, tankId: clutch.tankId }, dateIn(room, clutch.spawnedAt))
}

/** What its batches began to eat in the days that decide. */
function firstMeals({ room, brood, book }: Asked): Meals[] {
  const { bornOn } = book
  if (bornOn === null) return []
  const batches = batchesOf({ brood })
  const until = addDays(bornOn, FIRST_DAYS)
  return room.meals.filter(({ batchId, firstAt }) => batches.has(batchId) && dateIn(room, firstAt) <= until)
}

/** Cultures that its live food came from while rotifers or copepods decided over it. */
function culturesOf(asked: Asked): Id[] {
  const live = firstMeals(asked).filter(({ food }) => food === 'rotifers' || food === 'copepods')
  return [...new Set(live.flatMap(({ cultureId }) => (cultureId === null ? [] : [cultureId])))]
}

/** The foods of those days, in one order; algae of a bottle and of a culture green the water alike. */
function protocolOf(asked: Asked): ProtocolPart[] {
  const given = new Set(firstMeals(asked).map(({ food }) => (isAlgae(food) ? 'green_water' : food)))
  return protocolParts.filter((part) => given.has(part))
}

function artemiaDayOf(asked: Asked): number | null {
  const { bornOn } = asked.book
  const first = firstMeals(asked)
    .flatMap(({ food, firstAt }) => (food === 'artemia' ? [firstAt] : []))
    .sort()[0]
  return first === undefined || bornOn === null ? null : ageOn(bornOn, dateIn(asked.room, first))
}

const isAlgae = (food: Food): food is 'concentrate' | 'live_microalgae' =>
  food === 'concentrate' || food === 'live_microalgae'
