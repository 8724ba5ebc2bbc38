import { describe, expect, test } from 'vitest'
import { dayWeight, leftName, programOf, takenName } from './program.ts'
import type { FoodQuestion, PlanCulture, PlanEater } from './question.ts'
import { solve } from './solve.ts'

const culture = (given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id: 'A', food: 'rotifers', volumeL: 10, animals: 100, growth: new Array(3).fill({ gain: 2, crowding: 0 }) },
  ...{ floorAnimals: 20, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free', ...given },
})
const eater = (wanted: number[], food = 'rotifers'): PlanEater => ({ id: 'B', food, wanted, fedFrom: [] })
const asked = (cultures: PlanCulture[], eaters: PlanEater[], sievingLoss = 0): FoodQuestion => ({
  ...{ days: 3, cultures, eaters, sievingLoss },
})
/** At no cost of feeding anybody from anywhere. */
const program = (question: FoodQuestion) =>
  programOf(
    question,
    question.cultures.map(() => question.eaters.map(() => 0)),
  )
const variable = (question: FoodQuestion, name: string) =>
  program(question).variables.find((each) => each.name === name)

describe('the program of a room', () => {
  test('says of each day what may be taken, left and grown, and of each eater what is short', () => {
    const { variables, rows, unit } = program(asked([culture({ goneShare: 0.1 })], [eater([40, 40, 0])], 0.5))
    expect(unit).toBe(40)
    // In units of 40 animals: 100 in the morning, ten gone, the other ninety double where nobody eats; a floor of twenty.
    expect(variables).toEqual([
      { name: 'n_0_0', cost: 0, from: 2.5, to: 2.5 },
      { name: 'r_0_0', cost: 0, from: 0.5, to: 2.25 },
      { name: 'x_0_0_0', cost: 0, from: 0, to: 2.5 },
      { name: 'n_0_1', cost: 0, from: 0, to: 4.5 },
      { name: 'r_0_1', cost: 0, from: 0.5, to: 4.5 },
      { name: 'x_0_0_1', cost: 0, from: 0, to: 4.5 },
      { name: 's_0_0', cost: 2.25, from: 0, to: 1 },
      { name: 's_0_1', cost: 1.5, from: 0, to: 1 },
    ])
    const row = (terms: [string, number][], way: '<=' | '=', bound: number) => ({ terms, way, bound })
    expect(rows.map((each) => ({ ...each, bound: each.bound + 0 }))).toEqual([
      // Left and taken are what was there less what is gone, half of which may go at most; what is left doubles.
      row(
        [
          ['r_0_0', 1],
          ['x_0_0_0', 1],
          ['n_0_0', -1],
        ],
        '<=',
        -0.25,
      ),
      row(
        [
          ['x_0_0_0', 1],
          ['n_0_0', -0.5],
        ],
        '<=',
        -0.25,
      ),
      row(
        [
          ['n_0_1', 1],
          ['r_0_0', -2],
        ],
        '<=',
        0,
      ),
      row(
        [
          ['r_0_1', 1],
          ['x_0_0_1', 1],
          ['n_0_1', -1],
        ],
        '<=',
        0,
      ),
      row(
        [
          ['x_0_0_1', 1],
          ['n_0_1', -0.5],
        ],
        '<=',
        0,
      ),
      // Half is lost in sieving.
      row(
        [
          ['x_0_0_0', 0.5],
          ['s_0_0', 1],
        ],
        '=',
        1,
      ),
      row(
        [
          ['x_0_0_1', 0.5],
          ['s_0_1', 1],
        ],
        '=',
        1,
      ),
    ])
  })

  test('minds a backup’s food a little, besides what a feeder costs', () => {
    const question = asked([culture({ use: 'when-short' }), culture()], [eater([10, 10, 10])])
    const [backup, free] = [0, 1].map((c) =>
      programOf(question, [[0.2], [0.2]]).variables.find(({ name }) => name === takenName(c, 0, 0)),
    )
    expect([backup!.cost, free!.cost]).toEqual([expect.closeTo(0.25, 12), 0.2])
  })

  test('is of no culture that may not give, and of no day on which nobody may eat of it', () => {
    const names = (given: Partial<PlanCulture>, wanted = [10, 10, 10]) =>
      program(asked([culture(given)], [eater(wanted)])).variables.flatMap(({ name }) =>
        name.startsWith('x') ? [name] : [],
      )
    expect(names({})).toEqual(['x_0_0_0', 'x_0_0_1', 'x_0_0_2'])
    expect(names({ firstDay: 2 })).toEqual(['x_0_0_2'])
    expect(names({}, [0, 10, 0])).toEqual(['x_0_0_1'])
    expect(names({ use: 'never' })).toEqual([])
    // Under its floor today, over it tomorrow.
    expect(names({ floorAnimals: 150 })).toEqual(['x_0_0_1', 'x_0_0_2'])
    expect(programOf(asked([culture()], [eater([10, 10, 10])]), [[null]]).variables.map(({ name }) => name)).toEqual(
      [0, 1, 2].map((day) => `s_0_${day}`),
    )
  })

  test('thins a culture in the evening, though nobody eat of it', () => {
    const thinned = asked([culture({ thinnedToAnimals: 30 })], [eater([10, 10, 10])])
    expect([0, 1].map((day) => variable(thinned, leftName(0, day))!.to * 10)).toEqual([30, 30])
    expect(variable(thinned, 'n_0_1')!.to * 10).toBe(60)
    // A floor above what is left is no more than that.
    const low = asked([culture({ thinnedToAnimals: 15 })], [eater([10, 10, 10])])
    expect(variable(low, leftName(0, 0))).toMatchObject({ from: 1.5, to: 1.5 })
  })

  test('holds a crowded culture under the chords of its growth', () => {
    const day = { gain: 2, crowding: 0.01 }
    const { rows } = program(asked([culture({ growth: [day, day, day] })], [eater([10, 10, 10])]))
    const chord = rows.filter(({ terms }) => terms[0]![0] === 'n_0_1')
    expect(chord.length).toBeGreaterThan(3)
    // 100 that are left become 2 * 100 / (1 + 1) = 100; ten times less 20 / 1.1.
    const most = (left: number) => Math.min(...chord.map(({ terms, bound }) => bound - terms[1]![1] * left))
    expect(most(9)).toBeCloseTo(18 / 1.9, 1)
    expect(most(2.5)).toBeCloseTo(5 / 1.25, 1)
    expect(most(9)).toBeLessThanOrEqual(18 / 1.9)
  })
})

describe('an answer', () => {
  test('costs the animals that are missing, each as much as its day', async () => {
    // Half of 100 today, 50 left; the rest as its README has it: ten are missing on the last day.
    const question = asked([culture()], [eater([50, 50, 60])])
    const { cost, amountOf } = await solve(program(question))
    expect(cost * program(question).unit).toBeCloseTo(10, 6)
    expect(amountOf('s_0_2') * program(question).unit).toBeCloseTo(10, 6)
    expect(amountOf('of nothing')).toBe(0)
    // Two eaters want the first day what only half can be given: 50 are missing, 2.25 each.
    const two = asked([culture()], [eater([60, 0, 0]), eater([40, 0, 0])])
    expect((await solve(program(two))).cost * 100).toBeCloseTo(50 * 2.25, 6)
  })

  test('is said to be none where there is none, and the next program has one again', async () => {
    const row = (way: '<=' | '=', bound: number) => ({ terms: [['x', 1] as const], way, bound })
    const impossible = { unit: 1, variables: [{ name: 'x', cost: 1, from: 0, to: 1 }], rows: [row('=', 2)] }
    await expect(solve(impossible)).rejects.toThrow('The solver ended as "Infeasible"')
    expect((await solve({ ...impossible, rows: [row('=', 1)] })).cost).toBe(1)
    expect(await solve({ ...impossible, rows: [] })).toMatchObject({ cost: 0 })
    // A negative factor, a bound from below and a negative cost.
    const variables = [
      { name: 'x', cost: -1, from: 0, to: 9 },
      { name: 'y', cost: 3, from: 2, to: 9 },
    ]
    const apart = {
      unit: 1,
      variables,
      rows: [
        {
          terms: [
            ['x', 1],
            ['y', -2],
          ] as const,
          way: '<=' as const,
          bound: 1,
        },
      ],
    }
    const { cost, amountOf } = await solve({
      ...apart,
      rows: apart.rows.map((each) => ({ ...each, terms: [...each.terms] })),
    })
    expect([cost, amountOf('x'), amountOf('y')]).toEqual([1, 5, 2])
  })
})

test('a day counts half as much again as the next for two weeks, and a tenth more after them', () => {
  expect(dayWeight(0, 1)).toBe(1)
  expect(dayWeight(41, 42)).toBe(1)
  expect(dayWeight(0, 42)).toBeCloseTo(1.5 ** 14 * 1.1 ** 27, 6)
  expect(dayWeight(0, 10)).toBeCloseTo(1.5 ** 9, 9)
})
