import { expect, test } from 'vitest'
import type { FoodQuestion, PlanCulture } from './question.ts'
import { shareOut } from './share-out.ts'

const culture = (id: string, given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals: 100, growth: new Array(2).fill({ gain: 1, crowding: 0 }) },
  ...{ floorAnimals: 0, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free', ...given },
})
async function shared(cultures: PlanCulture[], wanted: number[][], fedFrom: string[][] = []) {
  const question: FoodQuestion = {
    ...{ days: 2, sievingLoss: 0, cultures },
    eaters: wanted.map((each, e) => ({ id: `${e}`, food: 'rotifers', wanted: each, fedFrom: fedFrom[e] ?? [] })),
  }
  const { taken, left } = await shareOut(question)
  const on = (day: number) => cultures.map((_, c) => wanted.map((__, e) => Math.round(taken(c, e, day))))
  return { taken: [on(0), on(1)], left: (c: number, day: number) => Math.round(left(c, day)) }
}

test('what one culture has is shared out as the program says, in animals', async () => {
  const { taken, left } = await shared([culture('A')], [[60, 25]])
  expect(taken).toEqual([[[50]], [[25]]])
  expect(left(0, 0)).toBe(50)
})

test('as little is missing as can be, and then few feed: the third culture keeps out of it', async () => {
  const { taken } = await shared([culture('A'), culture('B'), culture('C')], [[90, 10]])
  expect(taken[0]!.map(([each]) => each! > 0).filter(Boolean)).toHaveLength(2)
  expect(taken[0]!.flat().reduce((sum, each) => sum + each, 0)).toBe(90)
})

test('whoever feeds a batch now goes on with it', async () => {
  const { taken } = await shared([culture('A'), culture('B'), culture('C')], [[90, 0]], [['B', 'C']])
  expect(taken[0]![0]).toEqual([0])
  expect(taken[0]![1]![0]! + taken[0]![2]![0]!).toBe(90)
})

test('of no cultures is nothing', async () => {
  expect((await shared([], [[5, 5]])).taken).toEqual([[], []])
})

test('where food is short and a choice is left, each batch keeps to few', async () => {
  // 150 of 170 a day may go; of the whole of C and of what A and B have each batch needs two at most.
  const { taken } = await shared(
    [culture('A'), culture('B'), culture('C')],
    [
      [100, 0],
      [70, 0],
    ],
  )
  expect(taken[0]!.flat().reduce((sum, each) => sum + each, 0)).toBe(150)
  expect(taken[0]!.flat().filter((each) => each > 0).length).toBeLessThanOrEqual(4)
})
