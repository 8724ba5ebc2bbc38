import { type Random, seededRandom } from '@fryward/live-feed'
import { clopperPearsonInterval, kaplanMeier, observationsFromBook, wilsonInterval } from '@fryward/survival'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { BroodRoom } from '../testing/brood-room.ts'
import { type NaiveRow, naiveReview } from '../testing/naive-review.ts'
import { type BroodReview, reviewBroods } from './brood-review.ts'
import { numbersByDay } from './clutch-life.ts'
import type { ReviewRoom } from './review-room.ts'

const some = (random: Random, most: number) => Math.floor(random.uniform() * (most + 1))
const chance = (random: Random, share: number) => random.uniform() < share
const today = 90

/** A few clutches and what may happen to their young in three months: splits, merges, counts that are off, ends. */
function anyRoom(seed: number): ReviewRoom {
  const random = seededRandom(seed)
  const room = new BroodRoom()
  const clutches = Array.from({ length: 1 + some(random, 3) }, (_, index) =>
    room.clutch(index, chance(random, 0.8) ? 50 + some(random, 400) : undefined),
  )
  const vessels: { id: string; isBatch: boolean; since: number }[] = []
  for (let next = 0; next < clutches.length; ) {
    const together = clutches.slice(next, next + 1 + (chance(random, 0.3) ? 1 : 0))
    const larvae = chance(random, 0.8) ? 20 + some(random, 300) : undefined
    const day = 8 + some(random, 4)
    vessels.push({ id: room.batch(day, together, larvae).id, isBatch: true, since: day })
    next += together.length
  }
  for (let day = 13; day < today - 1; day += 1 + some(random, 3)) {
    const from = vessels[some(random, vessels.length - 1)]!
    if (room.ended.has(from.id)) continue
    const what = random.uniform()
    if (what < 0.35) room.lose(day, from, 1 + some(random, 8), chance(random, 0.5) ? 'thin' : undefined)
    else if (what < 0.55) {
      const heads = some(random, 120)
      const of = from.isBatch ? 'larvae' : 'juveniles'
      room.count(day, from, of, ...(chance(random, 0.3) ? [heads, heads + some(random, 9)] : [heads]))
    } else if (what < 0.65) room.leave(day, from, chance(random, 0.6) ? 'placed' : 'culled', 1 + some(random, 20))
    else if (what < 0.7) room.end(day, from)
    else {
      const isNew = chance(random, 0.4)
      const others = vessels.filter(({ id }) => id !== from.id && !room.ended.has(id))
      const batch = { id: from.id } as Parameters<BroodRoom['group']>[1]
      const to = isNew ? room.group(day, batch) : others[some(random, others.length - 1)]
      if (!to) continue
      // A move into a group must leave it the group it is; young of grow-out do not go back among larvae.
      const isBatch = !isNew && vessels.some(({ id, isBatch: larval }) => id === to.id && larval)
      if (!from.isBatch && isBatch) continue
      if (isNew) vessels.push({ id: to.id, isBatch: false, since: day })
      room.move(day, from, to, 1 + some(random, 40))
    }
  }
  return room.review(today)
}

const seeds = fc.integer({ min: 0, max: 2 ** 31 })
const eachRoom = (check: (room: ReviewRoom) => void) =>
  fc.assert(
    fc.property(seeds, (seed) => check(anyRoom(seed))),
    { numRuns: 60 },
  )
const stageOf = ({ stages }: BroodReview, name: string) => stages.find(({ stage }) => stage === name)!

describe('the review of any room', () => {
  test('gives the numbers that living through its facts one by one gives', () => {
    eachRoom((room) => {
      const naives = naiveReview(room)
      for (const review of reviewBroods(room))
        expectSame(review, { room, naive: naives.find(({ clutchIds }) => clutchIds.includes(review.brood.id))! })
    })
  })

  const expectSame = (review: BroodReview, { room, naive }: { room: ReviewRoom; naive: NaiveRow }) => {
    expect(naive.clutchIds).toEqual(review.brood.clutches.map(({ id }) => id))
    expect(stageOf(review, 'laid').atLeast).toBe(naive.laid)
    expect(stageOf(review, 'hatched').atLeast).toBe(naive.hatched)
    expect(stageOf(review, 'settled').atLeast ?? 0).toBe(naive.settled)
    expect(stageOf(review, 'placed').atLeast ?? 0).toBe(naive.placed)
    expect(review.losses.reduce((sum, { number }) => sum + number, 0)).toBe(naive.dead)
    const left = (...kinds: string[]) =>
      review.book.departures.filter(({ kind }) => kinds.includes(kind)).reduce((sum, { number }) => sum + number, 0)
    expect([left('moved', 'mixed'), left('culled')]).toEqual([naive.mixedOrMoved, naive.culled])
    expect(review.numberNow).toBe(naive.numberNow)
    expect(review.missing).toBe(naive.missing)
    for (const { on, atLeast, atMost, isCounted } of numbersByDay(room, review)) {
      const day = naive.days.get(on)!
      expect(isCounted, on).toBe(day.isCounted && day.number !== null)
      if (isCounted) expect([atLeast, atMost], on).toEqual([day.number, day.number])
      else if (atMost !== null) expect(atMost, on).toBeGreaterThanOrEqual(day.number ?? 0)
    }
  }

  test('never says more than it can know, and conserves animals: whoever came is dead, gone, or still there', () => {
    eachRoom((room) => {
      for (const { stages, ledger } of reviewBroods(room)) {
        for (const { atLeast, atMost, on, share, ofFirst, interval } of stages) {
          if (atLeast !== null && atMost !== null) expect(atLeast).toBeLessThanOrEqual(atMost)
          if (on !== null) expect(on <= room.today).toBe(true)
          if (interval) expect(interval.lower <= atLeast! && atLeast! <= interval.upper).toBe(true)
          for (const each of [share, ofFirst]) {
            if (!each) continue
            expect(0 <= each.lower && each.lower <= each.share + 1e-9).toBe(true)
            expect(each.share - 1e-9 <= each.upper && each.upper <= 1).toBe(true)
          }
        }
        const observations = ledger ? observationsFromBook({ entries: ledger }) : []
        if (observations.length === 0) continue
        const weight = (isEvent: boolean) =>
          observations.reduce((sum, each) => (each.event === isEvent ? sum + (each.weight ?? 1) : sum), 0)
        const { animals, events } = kaplanMeier(observations)
        expect(weight(true)).toBeCloseTo(events, 6)
        expect(weight(true) + weight(false)).toBeCloseTo(animals, 6)
      }
    })
  })

  test('gives the interval of its share that the textbook formula gives, where heads were counted one by one', () => {
    let compared = 0
    for (const review of Array.from({ length: 80 }, (_, seed) => reviewBroods(anyRoom(seed))).flat()) {
      // Numbers that contradict each other are given room for it.
      if (review.stages.some(({ isAboveBook }) => isAboveBook)) continue
      for (const { share, fromStage, stage, atLeast } of review.stages) {
        const from = review.stages.find((each) => each.stage === fromStage)
        if (!share || !from?.interval || stage === 'placed') continue
        const isOneByOne = from.interval.lower === from.interval.upper && from.atLeast === share.of
        const to = stageOf(review, stage).interval
        if (!isOneByOne || to?.lower !== to?.upper || atLeast === null || share.of === 0 || atLeast > share.of) continue
        const shareOf = { successes: atLeast, trials: share.of }
        const interval = share.of <= 30 ? clopperPearsonInterval(shareOf) : wilsonInterval(shareOf)
        expect(share.share).toBeCloseTo(atLeast / share.of, 12)
        expect(share.lower).toBeCloseTo(interval.lower, 10)
        expect(share.upper).toBeCloseTo(interval.upper, 10)
        compared += 1
      }
    }
    expect(compared).toBeGreaterThan(5)
  })

  test('gives more room to a share of numbers that were counted in a tenth, by the formula written out', () => {
    const z = 1.959963984540054
    const relativeError = (number: number) => (number > 100 ? Math.sqrt(10 * number) / number : 0)
    let compared = 0
    for (const review of Array.from({ length: 80 }, (_, seed) => reviewBroods(anyRoom(seed))).flat()) {
      const [laid, hatched] = [stageOf(review, 'laid').atLeast, stageOf(review, 'hatched')]
      const { share, atLeast } = hatched
      if (review.stages.some(({ isAboveBook }) => isAboveBook)) continue
      const isOneNumberEach = review.brood.clutches.length === 1 && laid !== null && atLeast !== null
      if (!share || !isOneNumberEach || atLeast >= laid || laid <= 100) continue
      const p = atLeast / laid
      // Wilson 1927, both ends; then Zou & Donner 2008 on the log scale.
      const centre = (p + (z * z) / (2 * laid)) / (1 + (z * z) / laid)
      const half = (z / (1 + (z * z) / laid)) * Math.sqrt((p * (1 - p)) / laid + (z / (2 * laid)) ** 2)
      const counting = z * Math.hypot(relativeError(laid), relativeError(atLeast))
      expect(share.lower).toBeCloseTo(p * Math.exp(-Math.hypot(Math.log(p / (centre - half)), counting)), 10)
      expect(share.upper).toBeCloseTo(
        Math.min(1, p * Math.exp(Math.hypot(Math.log((centre + half) / p), counting))),
        10,
      )
      compared += 1
    }
    expect(compared).toBeGreaterThan(10)
  })
})
