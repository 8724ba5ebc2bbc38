import { expect, test } from 'vitest'
import { mightFeed } from './might-feed.ts'
import type { FoodQuestion, PlanCulture } from './question.ts'

const culture = (animals: number, given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id: 'A', food: 'rotifers', volumeL: 10, animals, growth: new Array(2).fill({ gain: 2, crowding: 0 }) },
  ...{ floorAnimals: 0, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free', ...given },
})
/** Every culture feeds every eater but those that are said. */
function might(
  cultures: PlanCulture[],
  wanted: number[][],
  { not = [], loss = 0 }: { not?: number[][]; loss?: number },
) {
  const question: FoodQuestion = {
    ...{ days: 2, sievingLoss: loss, cultures },
    eaters: wanted.map((each, index) => ({ id: `${index}`, food: 'rotifers', wanted: each, fedFrom: [] })),
  }
  const [cs, es] = [[...cultures.keys()], [...wanted.keys()]]
  const links = cs.map((c) => es.map((e) => !not.some(([no, to]) => no === c && to === e)))
  return mightFeed(question, { cultures: cs, eaters: es }, links)
}

test('a culture feeds those that have no other of what it may give, day after day', () => {
  // Half of 100; the fifty that are left double, or half of the sixty left.
  expect(might([culture(100)], [[50, 50]], {})).toBe(true)
  expect(might([culture(100)], [[51, 0]], {})).toBe(false)
  expect(might([culture(100)], [[40, 60]], {})).toBe(true)
  expect(might([culture(100)], [[40, 61]], {})).toBe(false)
  expect(
    might(
      [culture(100)],
      [
        [30, 0],
        [20, 0],
      ],
      {},
    ),
  ).toBe(true)
  expect(
    might(
      [culture(100)],
      [
        [30, 0],
        [21, 0],
      ],
      {},
    ),
  ).toBe(false)
  // A tenth is lost in sieving.
  expect([might([culture(100)], [[45, 0]], { loss: 0.1 }), might([culture(100)], [[46, 0]], { loss: 0.1 })]).toEqual([
    true,
    false,
  ])
  expect(might([culture(100, { firstDay: 1 })], [[0, 100]], {})).toBe(true)
  expect(might([culture(100, { firstDay: 1 })], [[1, 0]], {})).toBe(false)
})

test('who eats of two finds enough in both together on every day, beside those that have one of them alone', () => {
  const two = [culture(100), culture(60)]
  expect([might(two, [[80, 0]], {}), might(two, [[81, 0]], {})]).toEqual([true, false])
  // Nobody has taken any the day before: 100 and 60 of what has doubled.
  expect([might(two, [[0, 160]], {}), might(two, [[0, 161]], {}), might(two, [[81, 160]], {})]).toEqual([
    true,
    false,
    false,
  ])
  expect([might(two, [[72, 0]], { loss: 0.1 }), might(two, [[73, 0]], { loss: 0.1 })]).toEqual([true, false])
  // The second eats twenty of A alone: thirty there and thirty of B are left to the first.
  const beside = (first: number) =>
    might(
      two,
      [
        [first, 0],
        [20, 0],
      ],
      { not: [[1, 1]] },
    )
  expect([beside(60), beside(61)]).toEqual([true, false])
  // One may be fed and the other not.
  const three = {
    not: [
      [2, 0],
      [0, 1],
      [1, 1],
    ],
  }
  expect(
    might(
      [...two, culture(10)],
      [
        [80, 0],
        [5, 0],
      ],
      three,
    ),
  ).toBe(true)
  expect(
    might(
      [...two, culture(10)],
      [
        [80, 0],
        [6, 0],
      ],
      three,
    ),
  ).toBe(false)
  // Each of two may find enough where both together do not: this is only what is hopeless from the start.
  expect(
    might(
      two,
      [
        [80, 0],
        [80, 0],
      ],
      {},
    ),
  ).toBe(true)
  expect(
    might(
      two,
      [
        [80, 0],
        [81, 0],
      ],
      {},
    ),
  ).toBe(false)
})
