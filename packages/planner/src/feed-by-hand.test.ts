import { expect, test } from 'vitest'
import { fedByHand } from './feed-by-hand.ts'
import type { FoodQuestion, PlanCulture } from './question.ts'

const culture = (given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id: 'A', food: 'rotifers', volumeL: 10, animals: 100, growth: new Array(2).fill({ gain: 2, crowding: 0 }) },
  ...{ floorAnimals: 0, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free', ...given },
})
const asked = (cultures: PlanCulture[], wanted: number[][], sievingLoss = 0): FoodQuestion => ({
  ...{ days: 2, sievingLoss, cultures },
  eaters: wanted.map((each, index) => ({ id: `${index}`, food: 'rotifers', wanted: each, fedFrom: [] })),
})
/** Every culture feeds every eater but those that are said. */
function fed(question: FoodQuestion, not: [culture: number, eater: number][] = []) {
  const [cultures, eaters] = [[...question.cultures.keys()], [...question.eaters.keys()]]
  const links = cultures.map((c) => eaters.map((e) => !not.some(([no, to]) => no === c && to === e)))
  return fedByHand(question, { cultures, eaters }, links)
}
const near = (amounts: number[][][]) =>
  amounts.map((day) => day.map((row) => row.map((each) => expect.closeTo(each, 9))))

test('a room is fed day by day of what has grown again', () => {
  // Half of 100, sieved with a loss of a tenth; 50 double.
  expect(fed(asked([culture()], [[45, 36]], 0.1))).toEqual({ missed: 0, taken: near([[[50]], [[40]]]) })
  // 40 of 100 leave 60, which are 120: of 80 wanted 20 are missing.
  expect(fed(asked([culture()], [[40, 80]]))).toEqual({ missed: 20, taken: near([[[40]], [[60]]]) })
  expect(fed(asked([culture({ firstDay: 1 })], [[40, 80]]))).toEqual({ missed: 40, taken: near([[[0]], [[80]]]) })
  expect(fed(asked([culture({ thinnedToAnimals: 30 })], [[10, 40]]))).toMatchObject({ missed: 0 })
  expect(fed(asked([culture({ thinnedToAnimals: 30 })], [[10, 60]]))).toMatchObject({ missed: 10 })
})

test('whoever has one culture eats of it first, and who has two strains them alike', () => {
  // The second has A alone and takes 30 of its 50; then 26 of what A and B may give are taken so that 0.7 of each is gone.
  const question = asked(
    [culture(), culture({ animals: 60 })],
    [
      [26, 0],
      [30, 0],
    ],
  )
  expect(fed(question, [[1, 1]]).taken[0]).toEqual(
    near([
      [
        [5, 30],
        [21, 0],
      ],
    ])[0],
  )
  // Two that may eat of both eat in their order.
  const both = fed(
    asked(
      [culture(), culture()],
      [
        [80, 0],
        [60, 0],
      ],
    ),
  )
  expect(both).toMatchObject({
    missed: 40,
    taken: [
      [
        [40, 10],
        [40, 10],
      ],
      near([
        [
          [0, 0],
          [0, 0],
        ],
      ])[0],
    ],
  })
})
