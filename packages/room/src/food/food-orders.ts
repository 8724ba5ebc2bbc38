import { chilledId } from '@fryward/husbandry'
import type { FoodOrders, FoodOutlook } from '@fryward/shared'

// The list stands for today and tomorrow.
const orderedDays = 2
/** With nearly all that it wants nothing is short: a count is no better (planner, nine tenths). */
const enough = 0.97

/** What the rules read of a plan: who eats from which culture that stands, and what goes of each, on the days of the list. */
export function ordersOf({ days, cultures, eaters }: FoodOutlook): FoodOrders[] {
  const standing = new Set(cultures.flatMap(({ cultureId }) => cultureId ?? []))
  const batches = eaters.filter(({ kind }) => kind === 'larval_batch')
  return days.slice(0, orderedDays).map((day) => ({
    date: day.date,
    batches: batches.flatMap(({ id, subjectId }) => {
      const eater = day.eaters.find((each) => each.id === id)
      if (!eater || eater.wanted <= 0) return []
      const given = day.gives.filter(({ eaterId }) => eaterId === id)
      const chilled = given.find(({ cultureId }) => cultureId === chilledId)?.animals ?? 0
      // Of what it wants out of the cultures; the reserve is given beside that.
      const share = Math.max(0, eater.got - chilled) / eater.wanted
      const from = given
        .filter(({ cultureId }) => standing.has(cultureId))
        .map(({ cultureId, volumeL, animals }) => ({ cultureId, volumeL, animals }))
        .sort((a, b) => b.animals - a.animals || (a.cultureId < b.cultureId ? -1 : 1))
      const said = { batchId: subjectId, share: share >= enough ? 1 : Number(share.toFixed(2)), from }
      return [chilled > 0 ? { ...said, chilled } : said]
    }),
    cultures: day.cultures
      .filter(({ id }) => standing.has(id))
      .map(({ id, fedL, spareL }) => ({ cultureId: id, fedL, spareL })),
  }))
}

// A tenth more or less is a jug's error: it is not told anew.
const worthTelling = 0.1
const leastL = 0.05

/** Whether a list that follows the one would be the same by the other, within what a jug measures. */
export function saysTheSame(one: readonly FoodOrders[], other: readonly FoodOrders[]): boolean {
  if (one.length !== other.length) return false
  return one.every((day, index) => {
    const next = other[index]!
    return (
      day.date === next.date &&
      sameAll(day.batches, next.batches, isSameBatch) &&
      sameAll(day.cultures, next.cultures, isSameCulture)
    )
  })
}

type Batch = FoodOrders['batches'][number]
type Culture = FoodOrders['cultures'][number]

const sameAll = <T>(one: readonly T[], other: readonly T[], same: (a: T, b: T) => boolean): boolean =>
  one.length === other.length && one.every((each, index) => same(each, other[index]!))

const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= Math.max(leastL, worthTelling * Math.max(a, b))

const isSameBatch = (a: Batch, b: Batch): boolean =>
  a.batchId === b.batchId &&
  Math.abs(a.share - b.share) <= worthTelling / 2 &&
  isNear(a.chilled ?? 0, b.chilled ?? 0) &&
  sameAll(a.from, b.from, (x, y) => x.cultureId === y.cultureId && isNear(x.volumeL, y.volumeL))

const isSameCulture = (a: Culture, b: Culture): boolean =>
  a.cultureId === b.cultureId && isNear(a.fedL, b.fedL) && isNear(a.spareL, b.spareL)
