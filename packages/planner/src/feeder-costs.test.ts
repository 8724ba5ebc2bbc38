import { expect, test } from 'vitest'
import { firstCosts, nextCosts } from './feeder-costs.ts'
import { programOf } from './program.ts'
import type { FoodQuestion, PlanCulture } from './question.ts'

const culture = (id: string, given: Partial<PlanCulture> = {}): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals: 100, growth: new Array(3).fill({ gain: 1, crowding: 0 }) },
  ...{ floorAnimals: 0, mostShare: 0.5, goneShare: 0, thinnedToAnimals: null, firstDay: 0, use: 'free', ...given },
})
const question: FoodQuestion = {
  ...{ days: 3, sievingLoss: 0 },
  cultures: [culture('A'), culture('B'), culture('C', { use: 'never' }), culture('D', { food: 'copepods' })],
  eaters: [{ id: 'one', food: 'rotifers', wanted: [0, 10, 30], fedFrom: ['B'] }],
}

test('a culture that feeds an eater now costs half, and one that may not feed it is none', () => {
  const [a, b, inDoubt, otherFood] = firstCosts(question).map(([cost]) => cost!)
  expect(b! / a!).toBeCloseTo(0.5, 12)
  expect([inDoubt, otherFood]).toEqual([null, null])
})

// Reweighted l1 norm (Candes, Wakin & Boyd 2008, J. Fourier Anal. Appl. 14:877-905): dearer the less it gave, by 1 / (1 + x / e).
test('the less a feeder gave the dearer it is: half as dear at half an average day, a third at a whole one', () => {
  const costs = firstCosts(question)
  const after = (amount: number) => nextCosts(question, { costs, given: () => amount }).map(([cost]) => cost!)
  const [nothing, half, whole] = [after(0), after(0.5), after(1)]
  expect(half[0]! / nothing[0]!).toBeCloseTo(1 / 2, 12)
  expect(whole[0]! / nothing[0]!).toBeCloseTo(1 / 3, 12)
  expect(whole[1]! / whole[0]!).toBeCloseTo(0.5, 12)
  expect(whole.slice(2)).toEqual([null, null])
})

test('numbers of a program stand near one: its unit is the mean of the days on which anybody eats', () => {
  expect(programOf(question, firstCosts(question)).unit).toBe(20)
  expect(programOf({ ...question, eaters: [] }, []).unit).toBe(1)
})

test('at first a feeder costs a tenth of the most, and fifty animals fed by a new one are minded as one short on the last day', () => {
  const costs = firstCosts(question)
  const [most] = nextCosts(question, { costs, given: () => 0 }).map(([cost]) => cost!)
  expect(most! / costs[0]![0]!).toBeCloseTo(10, 9)
  expect(1 / most!).toBeCloseTo(50, 9)
})
