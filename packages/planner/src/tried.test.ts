import { describe, expect, test } from 'vitest'
import { follow } from './follow.ts'
import type { DayGrowth, FoodQuestion, Future, PlanCulture, PlanEater } from './question.ts'
import { triedIn } from './tried.ts'
import { liveThroughAll } from './try-futures.ts'

const still: DayGrowth = { gain: 1, crowding: 0 }
/** A plan that gives nothing and spares nothing. */
const nothing = { taken: () => 0, left: () => Number.MAX_VALUE }

const culture = (id: string, given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals: 100, growth: [still, still] },
  ...{ floorAnimals: 0, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free' },
  ...given,
})
const eater = (id: string, given: Partial<PlanEater> = {}): PlanEater => ({
  ...{ id, food: 'rotifers', wanted: [20, 20], fedFrom: [] },
  ...given,
})
const room = (cultures: PlanCulture[], eaters: PlanEater[]): FoodQuestion => ({
  ...{ days: 2, cultures, eaters, sievingLoss: 0 },
})
/** A future in which cultures hold so many and nothing grows; everybody wants what was expected. */
const future = ({ eaters }: FoodQuestion, ...animals: number[]): Future => ({
  cultures: animals.map((each) => ({ animals: each, growth: [still, still] })),
  wanted: eaters.map(({ wanted }) => wanted),
})
const tried = (question: FoodQuestion, futures: Future[]) =>
  triedIn({ ...question, futures }, follow(question, nothing))!

describe('what is said of many futures', () => {
  const one = room([culture('A')], [eater('one')])

  test('is a quantile straight between ranks', () => {
    // Half of 2, 4, 8 and 16 can be given: R's quantile(c(1, 2, 4, 8), c(.1, .5, .9)), type 7, is 1.3, 3.0 and 6.8.
    const { bands, days } = tried(
      one,
      [8, 2, 16, 4].map((animals) => future(one, animals)),
    )
    expect(bands[0]!.couldGive[0]).toEqual({ p10: expect.closeTo(1.3, 9), p50: 3, p90: expect.closeTo(6.8, 9) })
    // 19, 18, 16 and 12 of 20 are missing: 16.25 on average, and 18.7 at the ninth tenth.
    expect(days[0]!.short).toEqual({ mean: 16.25, p90: expect.closeTo(18.7, 9) })
  })

  test('calls short what is under nine tenths, and worries from one in five on', () => {
    // Half of 36 is 18 of the 20 wanted, just enough.
    const [enough, short] = [future(one, 36), future(one, 35.9)]
    expect(tried(one, [enough]).days[0]!.chance).toBe(0)
    expect(tried(one, [enough, enough, enough, enough, short])).toMatchObject({
      firstDayOfWorry: 0,
      days: [{ chance: 0.2, chances: [0.2] }, {}],
    })
    expect(tried(one, [enough]).firstDayOfWorry).toBe(1)
  })

  test('is said of each food apart, and nobody eats what is not his food', () => {
    const two = room(
      [culture('A'), culture('C', { food: 'copepods' })],
      [eater('one'), eater('two', { food: 'copepods' })],
    )
    const { bands, days } = tried(two, [future(two, 0, 60)])
    expect(bands.map(({ food, wanted, couldGive }) => [food, wanted[0]!.p50, couldGive[0]!.p50])).toEqual([
      ['rotifers', 20, 0],
      ['copepods', 20, 30],
    ])
    expect(days[0]).toMatchObject({ chance: 1, chances: [1, 0], short: { mean: 20 } })
  })
})

describe('a future lived through', () => {
  const lived = (question: FoodQuestion, plan: Parameters<typeof follow>[1], ...animals: number[]) =>
    liveThroughAll(question, { futures: [future(question, ...animals)], course: follow(question, plan) })[0]!

  test('asks the culture of the plan first, and a backup after those that are free', () => {
    const cultures = [culture('A'), culture('B', { use: 'when-short', animals: 900 }), culture('C')]
    const asked = room(cultures, [eater('one')])
    const fromA = { taken: (c: number) => (c === 0 ? 20 : 0), left: () => Number.MAX_VALUE }
    // A gives half of its 100 and keeps 80; once it has crashed C is asked, and B, though fuller, is not.
    expect(lived(asked, fromA, 100, 900, 100)[1]!.could).toEqual([40, 450, 50])
    expect(lived(asked, fromA, 0, 900, 100)[1]!.could).toEqual([0, 450, 40])
    // C can give five; the other fifteen come from B.
    expect(lived(asked, fromA, 0, 900, 10)[1]!).toMatchObject({ could: [0, 442.5, 2.5], got: [20] })
  })

  test('asks of those alike the fullest', () => {
    const asked = room([culture('A', { animals: 90 }), culture('B')], [eater('one')])
    expect(lived(asked, nothing, 90, 100)[1]!.could).toEqual([45, 40])
  })

  test('shares fairly what is short, and loses in sieving what is lost', () => {
    const asked = { ...room([culture('A')], [eater('one'), eater('two', { wanted: [40, 0] })]), sievingLoss: 0.1 }
    // Half of 60, less a tenth, is 27 of the 60 wanted: 0.45 of each.
    const [first, second] = lived(asked, nothing, 60)
    expect(first!.got).toEqual([expect.closeTo(9, 9), expect.closeTo(18, 9)])
    expect(first!.could).toEqual([27])
    expect(second!.wanted).toEqual([20, 0])
  })
})

describe('a day of a future', () => {
  const doubling: DayGrowth = { gain: 2, crowding: 0 }
  const lived = (question: FoodQuestion, futures: Future[], plan: Parameters<typeof follow>[1] = nothing) =>
    liveThroughAll(question, { futures, course: follow(question, plan) })
  const grows = (animals: number): Future['cultures'][number] => ({ animals, growth: [doubling, doubling] })

  test('leaves a culture what was not eaten of it, to grow as that future has it', () => {
    const asked = { ...room([culture('A')], [eater('one')]), sievingLoss: 0.5 }
    // 40 before sieving are eaten of 100; 60 double, and half of 120 may go.
    const [days] = lived(asked, [{ cultures: [grows(100)], wanted: [[20, 20]] }])
    expect(days!.map(({ could }) => could)).toEqual([[25], [30]])
    expect(days!.map(({ got }) => got)).toEqual([[20], [20]])
  })

  test('wants what that future wants, and takes nothing of a culture that may not give yet', () => {
    const asked = room([culture('A', { firstDay: 1 })], [eater('one')])
    const [days] = lived(asked, [{ cultures: [grows(100)], wanted: [[7, 70]] }])
    expect(days).toEqual([
      { wanted: [7], got: [0], could: [0] },
      { wanted: [70], got: [70], could: [100] },
    ])
  })

  test('asks what the plan takes on the day before what it takes on others, and never a culture in doubt', () => {
    const cultures = [culture('A'), culture('B'), culture('C', { use: 'never' })]
    const asked = room(cultures, [eater('one', { wanted: [20, 20] })])
    const byDay = { taken: (c: number, _: number, day: number) => (c === day ? 20 : 0), left: () => Number.MAX_VALUE }
    const all = {
      cultures: [100, 100, 100].map((animals) => ({ animals, growth: [still, still] })),
      wanted: [[20, 20]],
    }
    const [days] = lived(asked, [all], byDay)
    expect(days!.map(({ could }) => could)).toEqual([
      [50, 50, 0],
      [40, 50, 0],
    ])
    // B has crashed: on its day A is asked, which the plan takes of on the other.
    const crashed = { ...all, cultures: [all.cultures[0]!, { animals: 0, growth: [still, still] }, all.cultures[2]!] }
    expect(lived(asked, [crashed], byDay)[0]![1]!.got).toEqual([20])
  })

  test('lets who is still hungry turn to the next, while others have enough', () => {
    const cultures = [culture('A', { animals: 60 }), culture('B', { animals: 40 }), culture('C', { animals: 20 })]
    const asked = room(cultures, [eater('one', { wanted: [45, 0] }), eater('two', { wanted: [10, 0], fedFrom: ['C'] })])
    const plan = { taken: (c: number, e: number) => (c === 2 * e ? 1 : 0), left: () => Number.MAX_VALUE }
    // The first has all 30 of A and 15 of B's 20, the second ten of C.
    const [days] = lived(asked, [future(asked, 60, 40, 20)], plan)
    expect(days![0]!.got).toEqual([45, 10])
    expect(days![1]!.could).toEqual([15, 12.5, 5])
    const short = lived(asked, [future(asked, 60, 10, 0)], plan)[0]![0]!
    // A is empty by the time that the second asks it, and B, of which the first has had five, a round later.
    expect(short.got).toEqual([35, 0])
  })
})

test('nothing is said of no futures', () => {
  const none = room([culture('A')], [eater('one')])
  expect(triedIn({ ...none, futures: [] }, follow(none, nothing))).toBeNull()
  expect(triedIn(none, follow(none, nothing))).toBeNull()
  expect(tried(none, [future(none, 100)])).toMatchObject({ futures: 1, firstDayOfWorry: null })
})
