import { describe, expect, test } from 'vitest'
import { fewerFeeders } from './fewer-feeders.ts'
import { sumOf } from './follow.ts'
import { programOf } from './program.ts'
import type { FoodQuestion, PlanCulture } from './question.ts'
import { solve } from './solve.ts'

/** A culture of which so many may go on the one day: half of its animals. */
const culture = (id: string, gives: number, use: PlanCulture['use'] = 'free'): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals: 2 * gives, growth: [{ gain: 1, crowding: 0 }], floorAnimals: 0 },
  ...{ mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use },
})

type Asked = { cultures: PlanCulture[]; eaters: { wanted: number; fedFrom?: string[] }[] }
type Amounts = readonly (readonly number[])[]

/** What each culture gives each eater in the end, when at first it gave `planned[culture][eater]`. */
async function found({ cultures, eaters }: Asked, planned: Amounts, mayNot: [number, number][] = []) {
  const question: FoodQuestion = {
    ...{ days: 1, sievingLoss: 0, cultures },
    eaters: eaters.map(({ wanted, fedFrom = [] }, index) => ({
      ...{ id: `${index}`, food: 'rotifers', wanted: [wanted], fedFrom },
    })),
  }
  const may = cultures.map((_, c) => eaters.map((_, e) => !mayNot.some(([no, to]) => no === c && to === e)))
  const taking = { taken: (c: number, e: number) => planned[c]![e]!, left: () => 0 }
  const shared = { links: planned.map((row) => row.map((each) => each > 0)), minded: 0, taking }
  const better = await fewerFeeders(question, { may, unit: sumOf(eaters.map(({ wanted }) => wanted)), shared })
  return planned.map((row, c) => row.map((_, e) => Math.round(better.taken(c, e, 0))))
}

describe('a batch that eats of several cultures', () => {
  const three = ['A', 'B', 'C'].map((id) => culture(id, 50))

  test('is joined to the one that feeds it now', async () => {
    const eaters = [{ wanted: 30, fedFrom: ['C'] }]
    expect(await found({ cultures: three, eaters }, [[10], [10], [10]])).toEqual([[0], [0], [30]])
    expect(await found({ cultures: three, eaters }, [[15], [15], [0]])).toEqual([[0], [0], [30]])
  })

  test('else to one that feeds it by the plan, and then to the first', async () => {
    expect(await found({ cultures: three, eaters: [{ wanted: 30 }] }, [[0], [15], [15]])).toEqual([[0], [30], [0]])
  })

  test('takes nothing of one that cannot feed it alone where another can', async () => {
    const cultures = [culture('A', 50), culture('B', 50), culture('C', 20)]
    const eaters = [{ wanted: 30, fedFrom: ['C'] }]
    expect(await found({ cultures, eaters }, [[10], [10], [10]])).toEqual([[30], [0], [0]])
  })

  test('is not joined to a backup, though that feeds it now, where others have enough', async () => {
    const cultures = [culture('A', 50), culture('B', 50, 'when-short'), culture('C', 50)]
    const eaters = [{ wanted: 30, fedFrom: ['B'] }]
    expect(await found({ cultures, eaters }, [[15], [0], [15]])).toEqual([[30], [0], [0]])
  })

  test('leaves one of three where two have enough', async () => {
    const given = await found({ cultures: three, eaters: [{ wanted: 80 }] }, [[30], [30], [20]])
    expect(given.filter(([each]) => each! > 0)).toHaveLength(2)
    expect(sumOf(given.flat())).toBe(80)
  })
})

describe('two batches trade places', () => {
  // The first wants all that A may give, of which the second eats; the second has enough of B.
  const asked: Asked = { cultures: [culture('A', 50), culture('B', 30)], eaters: [{ wanted: 50 }, { wanted: 20 }] }
  const planned = [
    [30, 20],
    [20, 0],
  ]

  test('where that lets one of them have a culture alone', async () => {
    expect(await found(asked, planned)).toEqual([
      [50, 0],
      [0, 20],
    ])
  })

  test('but not where the other may not be fed from what is left to it', async () => {
    expect(await found(asked, planned, [[1, 1]])).toEqual(planned)
  })

  test('and the other keeps what it eats of besides', async () => {
    const cultures = [...asked.cultures, culture('C', 20)]
    const eaters = [{ wanted: 50 }, { wanted: 40 }]
    // Forty of the fifty that B and C may give are four fifths of each.
    expect(await found({ cultures, eaters }, [...planned, [0, 20]])).toEqual([
      [50, 0],
      [0, 24],
      [0, 16],
    ])
  })
})

describe('where food is short', () => {
  const growth = new Array(2).fill({ gain: 1, crowding: 0 })
  const still = (id: string, animals: number): PlanCulture => ({ ...culture(id, animals / 2), growth })
  /** Links of every culture to every batch at first, of which so much is minded to be missing. */
  async function better(cultures: PlanCulture[], wanted: number[][], minded: number) {
    const question: FoodQuestion = {
      ...{ days: 2, sievingLoss: 0, cultures },
      eaters: wanted.map((each, index) => ({ id: `${index}`, food: 'rotifers', wanted: each, fedFrom: [] })),
    }
    const may = cultures.map(() => wanted.map(() => true))
    const taking = { taken: () => -1, left: () => -1 }
    const unit = sumOf(wanted.flat()) / 2
    const { taken, left } = await fewerFeeders(question, { may, unit, shared: { links: may, minded, taking } })
    const on = (day: number) => cultures.map((_, c) => wanted.map((__, e) => Math.round(taken(c, e, day))))
    return { taken: [on(0), on(1)], left: [0, 1].map((day) => cultures.map((_, c) => Math.round(left(c, day)))) }
  }

  test('nobody eats of one that has nothing, and the solver says what is left for the next day', async () => {
    // Half of 100 each on the first day, half of the 50 left on the second: ten of the last sixty are missing.
    const { taken, left } = await better([still('A', 100), still('B', 100), still('C', 0)], [[100, 60]], 10)
    expect(taken).toEqual([
      [[50], [50], [0]],
      [[25], [25], [0]],
    ])
    expect(left[0]).toEqual([50, 50, 0])
  })

  test('and more would be missing, all stays as it was shared', async () => {
    const { taken, left } = await better([still('A', 100), still('B', 100)], [[100, 60]], 10)
    expect([taken[0], left[0]]).toEqual([
      [[-1], [-1]],
      [-1, -1],
    ])
  })

  test('batches part where each may have its own with no more missing', async () => {
    // 150 may go and 160 are wanted: whoever has C alone has its fifty, and the other a hundred of 110.
    const { taken } = await better(
      [still('A', 100), still('B', 100), still('C', 100)],
      [
        [110, 0],
        [50, 0],
      ],
      15,
    )
    expect(taken[0]!.map(([, second]) => second! > 0).filter(Boolean)).toHaveLength(1)
    expect(sumOf(taken[0]!.map(([, second]) => second!))).toBe(50)
    expect(sumOf(taken[0]!.map(([first]) => first!))).toBe(100)
    expect(taken[0]!.every(([first, second]) => first === 0 || second === 0)).toBe(true)
  })
})

describe('a part that is fed by hand', () => {
  /** A culture that is thinned to half of what it has, and doubles: so many may go of it each day, day after day. */
  const steady = (id: string, gives: number, days: number): PlanCulture => ({
    ...culture(id, gives),
    ...{ growth: new Array(days).fill({ gain: 2, crowding: 0 }), thinnedToAnimals: gives },
  })
  /** Sixty a day of A and B and eighty of all three, of which fifty a day may go, for so many days. */
  async function after(days: number) {
    const wanted = [60, 80]
    const question: FoodQuestion = {
      ...{ days, sievingLoss: 0, cultures: ['A', 'B', 'C'].map((id) => steady(id, 50, days)) },
      eaters: wanted.map((each, e) => ({
        id: `${e}`,
        food: 'rotifers',
        wanted: new Array(days).fill(each),
        fedFrom: [],
      })),
    }
    const links = [
      [true, true],
      [true, true],
      [false, true],
    ]
    const shared = { links, minded: 0, taking: { taken: () => -1, left: () => -1 } }
    const { taken, left } = await fewerFeeders(question, { may: links, unit: 140, shared })
    return { day: links.map((row, c) => row.map((_, e) => Math.round(taken(c, e, 0)))), left }
  }

  test('but not well is asked of the solver: it saves the first of two for whoever has no other', async () => {
    // By hand the first takes thirty of each, and of B too few are left. Forty of A or more leave thirty of B for the second.
    const { day } = await after(1)
    expect(day[0]![0]).toBeGreaterThanOrEqual(40)
    expect([sumOf(day.map(([first]) => first!)), sumOf(day.map(([, second]) => second!))]).toEqual([60, 80])
    expect(day.flat().filter((each) => each > 0)).toHaveLength(4)
  })

  test('and misses two average days’ food by it is given up: ten a day of 140 are that after 28 days', async () => {
    expect((await after(27)).day.flat()).not.toContain(-1)
    expect(new Set((await after(30)).day.flat())).toEqual(new Set([-1]))
  })

  test('counts on nothing being left', async () => {
    const question: FoodQuestion = {
      ...{ days: 1, sievingLoss: 0, cultures: [culture('A', 50), culture('B', 50)] },
      eaters: [{ id: 'one', food: 'rotifers', wanted: [30], fedFrom: [] }],
    }
    const shared = { links: [[true], [true]], minded: 0, taking: { taken: () => 15, left: () => -1 } }
    const { taken, left } = await fewerFeeders(question, { may: [[true], [true]], unit: 30, shared })
    expect([taken(0, 0, 0), taken(1, 0, 0), left(0, 0), left(1, 0)]).toEqual([30, 0, 0, 0])
  })
})

test('where food is short so much is asked of the solver and no more: 1,500 rows', async () => {
  // Two that give what they can and 13 that are empty: first each alone is tried, then all but one. The first of the empty ones
  // that is left out would be better, but comes six rows too late.
  const days = 42
  const growth = new Array(days).fill({ gain: 1.5, crowding: 0 })
  const cultures = [300, 300, ...new Array<number>(13).fill(0)].map(
    (gives, c): PlanCulture => ({ ...culture(`${c}`, gives), growth, thinnedToAnimals: 400 }),
  )
  const eaters = [{ id: 'one', food: 'rotifers', wanted: new Array(days).fill(2000), fedFrom: [] }]
  const program = (...of: number[]) =>
    programOf(
      { days, sievingLoss: 0, cultures: of.map((c) => cultures[c]!), eaters },
      of.map(() => [0]),
    )
  const tried = [...cultures.keys()].map((c) => program(c)).concat(program(1), program(0), program(0, 1))
  const may = cultures.map(() => [true])
  const minded = (await solve(program(0, 1))).cost * 2000
  const shared = { links: may, minded, taking: { taken: () => -1, left: () => -1 } }
  const { taken } = await fewerFeeders({ days, sievingLoss: 0, cultures, eaters }, { may, unit: 2000, shared })
  expect(sumOf(tried.map(({ rows }) => rows.length))).toBe(1506)
  expect(taken(2, 0, 0)).toBe(-1)
})
