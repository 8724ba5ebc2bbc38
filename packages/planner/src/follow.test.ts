import { describe, expect, test } from 'vitest'
import { follow } from './follow.ts'
import type { DayGrowth, FoodQuestion, PlanCulture, PlanEater } from './question.ts'

const doubling: DayGrowth = { gain: 2, crowding: 0 }
const culture = (id: string, given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals: 100, growth: [doubling, doubling] },
  ...{ floorAnimals: 0, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free' },
  ...given,
})
const eater = (id: string, given: Partial<PlanEater> = {}): PlanEater => ({
  ...{ id, food: 'rotifers', wanted: [20, 20], fedFrom: [] },
  ...given,
})
const room = (cultures: PlanCulture[], eaters: PlanEater[], sievingLoss = 0): FoodQuestion => ({
  ...{ days: 2, cultures, eaters, sievingLoss },
})
/** Taken of each culture for each eater, the same on both days; what the plan counts on being left is all or nothing. */
const planned = (amounts: readonly (readonly number[])[], left = 0) => ({
  ...{ taken: (c: number, e: number) => amounts[c]![e]!, left: () => left },
})
const near = (amounts: readonly number[]) => amounts.map((each) => expect.closeTo(each, 9))
/** Nothing may be given beyond the plan. */
const allLeft = Number.MAX_VALUE

describe('a plan that is followed', () => {
  test('takes what it says and leaves the rest to grow', () => {
    const course = follow(room([culture('A')], [eater('one')]), planned([[20]], allLeft))
    expect(course).toEqual([
      { animals: [100], taken: [[20]], left: [80], got: [20] },
      { animals: [160], taken: [[20]], left: [140], got: [20] },
    ])
  })

  test('gives alive what sieving leaves, and nobody more than he wants', () => {
    const asked = room([culture('A'), culture('B')], [eater('one', { wanted: [18, 18] })], 0.1)
    // 18 alive are 20 before sieving; of 30 and 10 that were planned half is given.
    const [first] = follow(asked, planned([[30], [10]], allLeft))
    expect(first!.taken).toEqual([near([15]), near([5])])
    expect(first!.got).toEqual(near([18]))
  })

  test('takes of a culture no more than it may give, and nothing before its day', () => {
    const eaters = [eater('one', { wanted: [60, 60] }), eater('two', { wanted: [40, 40] })]
    const [first] = follow(room([culture('A', { firstDay: 0 })], eaters), planned([[60, 40]], allLeft))
    expect(first!.taken).toEqual([near([30, 20])])
    const young = follow(room([culture('A', { firstDay: 1 })], eaters), planned([[60, 40]], allLeft))
    expect(young.map(({ got }) => got)).toEqual([[0, 0], near([60, 40])])
    expect(follow(room([culture('A', { use: 'never' })], eaters), planned([[60, 40]]))[0]!.got).toEqual([0, 0])
  })

  test('shares what is short fairly, though the plan gave it to one', () => {
    const eaters = [eater('one', { wanted: [60, 0] }), eater('two', { wanted: [40, 40] })]
    const [first] = follow(room([culture('A')], eaters), planned([[50, 0]], allLeft))
    // The second is fed by nobody, so it has a claim on whatever there is: half of what each wants.
    expect(first!.got).toEqual(near([30, 20]))
  })

  test('gives what is there beyond the plan, but not what the plan leaves for later', () => {
    const asked = room([culture('A')], [eater('one', { wanted: [50, 50] })])
    expect(follow(asked, planned([[30]], 0))[0]!.got).toEqual(near([50]))
    // 100 less 30 less 60 that are to be left are ten more.
    expect(follow(asked, planned([[30]], 60))[0]!.got).toEqual(near([40]))
    expect(follow(asked, planned([[30]], 80))[0]!.got).toEqual(near([30]))
    // What has gone elsewhere today is not there.
    const shared = room([culture('A', { goneShare: 0.2 })], [eater('one', { wanted: [50, 50] })])
    expect(follow(shared, planned([[10]], 60))[0]!.got).toEqual(near([20]))
    expect(follow(shared, planned([[10]], 0))[0]!.got).toEqual(near([30]))
  })

  test('gives beyond the plan to those that a culture feeds by it or feeds now, and to no other', () => {
    const cultures = [culture('A'), culture('B', { animals: 40 })]
    const eaters = [eater('one', { wanted: [60, 60] }), eater('two', { wanted: [60, 60] })]
    const plan = planned([
      [20, 0],
      [0, 20],
    ])
    // A has 30 more for the first; the second, which B feeds, has no claim on them.
    expect(follow(room(cultures, eaters), plan)[0]!.got).toEqual(near([50, 20]))
    const now = [eaters[0]!, eater('two', { wanted: [60, 60], fedFrom: ['A'] })]
    expect(follow(room(cultures, now), plan)[0]!.got).toEqual(near([35, 35]))
    const other = [eaters[0]!, eater('two', { wanted: [60, 60], fedFrom: ['A'], food: 'copepods' })]
    expect(follow(room(cultures, other), plan)[0]!.got).toEqual(near([50, 20]))
  })

  test('leaves a plan as it is where nobody is short', () => {
    const eaters = [eater('one', { fedFrom: ['B'] })]
    const { taken, left } = follow(room([culture('A'), culture('B')], eaters), planned([[20], [0]]))[0]!
    expect([taken, left]).toEqual([
      [[20], [0]],
      [80, 100],
    ])
  })
})
