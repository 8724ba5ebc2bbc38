import { describe, expect, test } from 'vitest'
import { planFood } from './plan-food.ts'
import { dayWeight } from './program.ts'
import type { DayGrowth, FoodQuestion, Future, PlanCulture, PlanEater } from './question.ts'

/** Doubles every day and is never crowded: to be followed in the head. */
const doubling: DayGrowth = { gain: 2, crowding: 0 }

const culture = (id: string, given: Partial<PlanCulture> = {}, days = 3): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals: 100, growth: new Array<DayGrowth>(days).fill(doubling) },
  ...{ floorAnimals: 20, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free' },
  ...given,
})
const eater = (id: string, wanted: number[], fedFrom: string[] = []): PlanEater => ({
  ...{ id, food: 'rotifers', wanted, fedFrom },
})
const question = (given: Partial<FoodQuestion> & Pick<FoodQuestion, 'cultures' | 'eaters'>): FoodQuestion => ({
  ...{ days: given.eaters[0]?.wanted.length ?? 3, sievingLoss: 0 },
  ...given,
})
const gives = (plan: Awaited<ReturnType<typeof planFood>>, day: number) =>
  plan.days[day]!.gives.map(({ cultureId, eaterId, animals }) => `${cultureId} ${eaterId} ${Math.round(animals)}`)

describe('the worked example of the README', () => {
  // 100 animals: 50 go on day 0, 50 are left and double; 50 go on day 1, 50 are left; 50 of the 60 wanted go on day 2.
  const example = question({ cultures: [culture('A')], eaters: [eater('B', [50, 50, 60])] })

  test('is short by ten on the last day, and by nothing before', async () => {
    const { days, shortfall } = await planFood(example)
    expect(days.map(({ eaters }) => Math.round(eaters[0]!.got))).toEqual([50, 50, 50])
    expect(days.map(({ cultures }) => Math.round(cultures[0]!.animals))).toEqual([100, 100, 100])
    expect(days[0]!.gives[0]!.litres).toBeCloseTo(5, 6)
    expect(shortfall).toBeCloseTo(10, 5)
  })

  test('is short today where that saves half as much again a day later, and not for less', async () => {
    // Five fewer on day 0 are ten more on day 1 and, left, twenty on day 2, of which ten go: twice as many, not 1.5 * 1.5.
    expect([dayWeight(0, 3), dayWeight(1, 3), dayWeight(2, 3)]).toEqual([2.25, 1.5, 1])
    // Half as much again for two weeks, a tenth after them: common practice, as the README says.
    const ofNext = (day: number) => dayWeight(day, 30) / dayWeight(day + 1, 30)
    expect([0, 13, 14, 28].map(ofNext)).toEqual([1.5, 1.5, 1.1, 1.1].map((each) => expect.closeTo(each, 9)))
    const fast = new Array<DayGrowth>(2).fill({ gain: 4, crowding: 0 })
    const cultures = [culture('A', { growth: fast })]
    // 25 fewer on day 0 leave 75, which become 300, of which 150 go: fifty more, and so worth it.
    const { days } = await planFood(question({ cultures, eaters: [eater('B', [50, 150])] }))
    expect(days.map(({ eaters }) => Math.round(eaters[0]!.got))).toEqual([25, 150])
  })
})

describe('a plan', () => {
  test('keeps to the culture that feeds a batch already, and gives each batch one', async () => {
    const asked = question({
      cultures: [culture('A'), culture('B'), culture('C')],
      eaters: [eater('one', [20, 20, 20], ['B']), eater('two', [20, 20, 20], ['C'])],
    })
    expect(gives(await planFood(asked), 1)).toEqual(['B one 20', 'C two 20'])
  })

  test('spreads new batches over the cultures rather than heap them on one', async () => {
    const asked = question({
      cultures: [culture('A'), culture('B')],
      eaters: [eater('one', [20, 20, 20]), eater('two', [20, 20, 20])],
    })
    expect(new Set((await planFood(asked)).days[0]!.gives.map(({ cultureId }) => cultureId)).size).toBe(2)
  })

  test('takes no more than half of a culture in a day, however many eat from it', async () => {
    const asked = question({
      cultures: [culture('A')],
      eaters: [eater('one', [40, 0, 0]), eater('two', [40, 0, 0]), eater('three', [20, 0, 0])],
    })
    const { days, shortfall } = await planFood(asked)
    expect(days[0]!.cultures[0]!.fedL).toBeCloseTo(5, 6)
    expect(shortfall).toBeCloseTo(50, 5)
    // Each gets half of what it wants.
    expect(days[0]!.eaters.map(({ got }) => Math.round(got))).toEqual([20, 20, 10])
  })

  test('leaves a culture its floor', async () => {
    const asked = question({ cultures: [culture('A', { floorAnimals: 90 })], eaters: [eater('one', [40, 0, 0])] })
    expect((await planFood(asked)).days[0]!.eaters[0]!.got).toBeCloseTo(10, 6)
  })

  test('counts what has gone elsewhere today against what a culture may still give, and turns to one that can', async () => {
    // Of half of 100 animals 40 are gone: 10 are left to eat, and 50 to double; without any taker 60 double.
    const cultures = [culture('A', { goneShare: 0.4 })]
    const { days } = await planFood(question({ cultures, eaters: [eater('one', [30, 0, 0])] }))
    expect(days[0]!.eaters[0]!.got).toBeCloseTo(10, 6)
    expect(days.map(({ cultures: [stock] }) => Math.round(stock!.animals))).toEqual([100, 100, 200])
    // Gone on its day alone.
    const later = await planFood(question({ cultures, eaters: [eater('one', [0, 50, 0])] }))
    expect(later.days.map(({ eaters }) => Math.round(eaters[0]!.got))).toEqual([0, 50, 0])
    const both = [...cultures, culture('B')]
    expect(gives(await planFood(question({ cultures: both, eaters: [eater('one', [30, 0, 0], ['A'])] })), 0)).toEqual([
      'B one 30',
    ])
  })

  test('feeds nobody from a culture in doubt, nor from one that is too young', async () => {
    const cultures = [culture('A', { use: 'never' }), culture('B', { firstDay: 2 })]
    const plan = await planFood(question({ cultures, eaters: [eater('one', [10, 10, 10])] }))
    expect(plan.days.map(({ eaters }) => Math.round(eaters[0]!.got))).toEqual([0, 0, 10])
  })

  test('turns to a backup for what no other can give, and says so', async () => {
    const cultures = [culture('A'), culture('B', { use: 'when-short' })]
    const enough = await planFood(question({ cultures, eaters: [eater('one', [50, 0, 0])] }))
    expect([enough.lastResorts, gives(enough, 0)]).toEqual([[], ['A one 50']])
    const short = await planFood(question({ cultures, eaters: [eater('one', [70, 0, 0])] }))
    expect([short.lastResorts, gives(short, 0)]).toEqual([['B'], ['A one 50', 'B one 20']])
  })

  test('counts what is lost in sieving', async () => {
    const asked = question({ cultures: [culture('A')], eaters: [eater('one', [18, 0, 0])], sievingLoss: 0.1 })
    const [give] = (await planFood(asked)).days[0]!.gives
    expect([give!.animals, give!.litres]).toEqual([expect.closeTo(18, 6), expect.closeTo(2, 6)])
  })

  test('gives nobody what is not his food, nor from a culture in doubt, however much there is of it', async () => {
    const cultures = [
      culture('A'),
      culture('B'),
      culture('C', { food: 'copepods', animals: 900 }),
      culture('D', { use: 'never', animals: 900 }),
    ]
    const plan = await planFood(question({ cultures, eaters: [eater('one', [80, 0, 0], ['C', 'D'])] }))
    expect(new Set(plan.days[0]!.gives.map(({ cultureId }) => cultureId))).toEqual(new Set(['A', 'B']))
    expect(plan.shortfall).toBeCloseTo(0, 6)
  })

  test('counts it too where there is not enough for every day', async () => {
    // Of 100 that neither grow nor die 80 are sieved to 40 today, and the 20 that are left to 10 tomorrow.
    const still = new Array<DayGrowth>(2).fill({ gain: 1, crowding: 0 })
    const cultures = [culture('A', { growth: still, floorAnimals: 0, mostShare: 1 })]
    const { days } = await planFood(question({ cultures, eaters: [eater('one', [40, 40])], sievingLoss: 0.5 }))
    expect(days.map(({ eaters }) => Math.round(eaters[0]!.got))).toEqual([40, 10])
  })

  test('says what is thinned besides what is eaten', async () => {
    const asked = question({ cultures: [culture('A', { thinnedToAnimals: 60 })], eaters: [eater('one', [10, 0, 0])] })
    expect((await planFood(asked)).days[0]!.cultures[0]).toMatchObject({ fedL: 1, spareL: 3 })
  })

  test('of no cultures, no eaters or neither is a plan', async () => {
    const none = await planFood({ days: 2, cultures: [], eaters: [], sievingLoss: 0.1 })
    expect([none.shortfall, none.tried, none.days.length]).toEqual([0, null, 2])
    const hungry = await planFood(question({ cultures: [], eaters: [eater('one', [5, 5])] }))
    expect(hungry.shortfall).toBe(10)
    const idle = await planFood({ days: 2, cultures: [culture('A', {}, 2)], eaters: [], sievingLoss: 0.1 })
    expect(idle.days.map(({ cultures }) => cultures[0]!.animals)).toEqual([100, 200])
  })

  test('says litres of what stands there, and nothing of a culture that is empty', async () => {
    const cultures = [culture('A', { volumeL: 4 }), culture('B', { animals: 0 })]
    const { days } = await planFood(question({ cultures, eaters: [eater('one', [25, 0, 0])], sievingLoss: 0 }))
    expect(days[0]!.gives).toEqual([{ cultureId: 'A', eaterId: 'one', litres: 1, animals: 25 }])
    expect(days[0]!.cultures).toEqual([
      { id: 'A', animals: 100, fedL: 1, spareL: 0 },
      { id: 'B', animals: 0, fedL: 0, spareL: 0 },
    ])
    expect(days[1]!.gives).toEqual([])
    expect(days[0]!.eaters).toEqual([{ id: 'one', wanted: 25, got: 25 }])
    // Of one animal half is half of the culture.
    const few = question({
      cultures: [culture('A', { animals: 1, floorAnimals: 0 })],
      eaters: [eater('one', [0.5, 0, 0])],
    })
    expect((await planFood(few)).days[0]!.gives).toEqual([{ cultureId: 'A', eaterId: 'one', litres: 5, animals: 0.5 }])
  })

  test('of one culture for each leaves alone a backup that would have helped nobody', async () => {
    const cultures = [culture('A'), culture('B', { use: 'when-short' })]
    const plan = await planFood(question({ cultures, eaters: [eater('one', [45, 0, 0], ['B'])], sievingLoss: 0.1 }))
    expect(plan).toMatchObject({ lastResorts: [], shortfall: 0 })
    expect(gives(plan, 0)).toEqual(['A one 45'])
  })

  test('refuses what cannot be, by name', async () => {
    const bad = question({ cultures: [culture('A', { mostShare: 1.5 })], eaters: [eater('one', [1, 1, 1])] })
    await expect(planFood(bad)).rejects.toThrow(/cultures\[0\]\.mostShare/)
    const short = question({ cultures: [culture('A')], eaters: [eater('one', [1, 1])], days: 3 })
    await expect(planFood(short)).rejects.toThrow(/eaters\[0\]\.wanted\.length/)
    const twice = question({ cultures: [culture('A'), culture('A')], eaters: [] })
    await expect(planFood(twice)).rejects.toThrow(/each id once/)
  })
})

describe('a plan tried against futures', () => {
  const days = 3
  const crashed: DayGrowth = { gain: 0, crowding: 0 }
  const future = (animals: number, growth: DayGrowth[], wanted: number[]): Future => ({
    cultures: [{ animals, growth }],
    wanted: [wanted],
  })
  const well = future(100, [doubling, doubling, doubling], [20, 20, 20])
  const crash = future(100, [doubling, crashed, crashed], [20, 20, 20])
  const thin = future(45, [doubling, doubling, doubling], [20, 20, 20])
  const asked = (futures: Future[]) =>
    question({ cultures: [culture('A')], eaters: [eater('one', [20, 20, 20])], days, futures })

  test('gives the chance of falling short of each day, by how much, and the first day of worry', async () => {
    const { tried } = await planFood(asked([well, well, well, crash]))
    expect(tried!.days.map(({ chance }) => chance)).toEqual([0, 0, 0.25])
    expect(tried!.days[2]!.short.mean).toBe(5)
    expect(tried!.firstDayOfWorry).toBe(2)
    expect((await planFood(asked([well, well, well, well, well, crash]))).tried!.firstDayOfWorry).toBeNull()
  })

  test('takes what is wanted on the day while it may, and gives the bands of both', async () => {
    // 45 animals give 22.5 by half; 25 are left and become 50.
    const { tried } = await planFood(asked([thin]))
    expect(tried!.days.map(({ chance }) => chance)).toEqual([0, 0, 0])
    expect(tried!.bands).toEqual([
      {
        food: 'rotifers',
        wanted: [20, 20, 20].map((each) => ({ p10: each, p50: each, p90: each })),
        couldGive: [22.5, 25, 30].map((each) => ({ p10: each, p50: each, p90: each })),
      },
    ])
  })

  test('turns to another culture that may give when its own has crashed', async () => {
    const two = (second: DayGrowth[]): Future => ({
      cultures: [
        { animals: 0, growth: [doubling, doubling, doubling] },
        { animals: 100, growth: second },
      ],
      wanted: [[20, 20, 20]],
    })
    const cultures = [culture('A'), culture('B')]
    const room = {
      cultures,
      eaters: [eater('one', [20, 20, 20], ['A'])],
      days,
      futures: [two(crash.cultures[0]!.growth.slice())],
    }
    const { tried } = await planFood(question(room))
    expect(tried!.days.map(({ chances }) => chances)).toEqual([[0], [0], [1]])
  })
})
