import { expect, test } from 'vitest'
import { fewerFeeders } from './fewer-feeders.ts'
import type { Links } from './links.ts'
import type { FoodQuestion, PlanCulture } from './question.ts'

/** A culture of 100 animals, half of which may go. */
const culture = (id: string): PlanCulture => ({
  ...{ id, food: 'rotifers', volumeL: 10, animals: 100, growth: [{ gain: 1, crowding: 0 }], floorAnimals: 0 },
  ...{ mostShare: 0.5, thinnedToAnimals: null, firstDay: 0, use: 'free' },
})

const wanted = 30
const room = (fedFrom: string[], cultures = [culture('A'), culture('B'), culture('C')]): FoodQuestion => ({
  ...{ days: 1, sievingLoss: 0, cultures },
  eaters: [{ id: 'one', food: 'rotifers', wanted: [wanted], fedFrom }],
})

/** What each culture gives in the end to the one eater, who got his food in equal parts from those marked. */
async function joined(question: FoodQuestion, feeders: readonly boolean[]): Promise<number[]> {
  const links: Links = feeders.map((isFed) => [isFed])
  const part = wanted / feeders.filter(Boolean).length
  const taking = { taken: (c: number) => (feeders[c] ? part : 0), left: () => 0 }
  const shared = { links, minded: 0, taking }
  const found = await fewerFeeders(question, { may: question.cultures.map(() => [true]), unit: wanted, shared })
  return question.cultures.map((_, c) => Math.round(found.taken(c, 0, 0)))
}

test('a batch is joined to the culture that feeds it now', async () => {
  expect(await joined(room(['C']), [true, true, true])).toEqual([0, 0, 30])
  expect(await joined(room(['C']), [true, true, false])).toEqual([0, 0, 30])
})

test('else to one that feeds it by the plan, and then to the first', async () => {
  expect(await joined(room([]), [false, true, true])).toEqual([0, 30, 0])
})

test('of a culture that cannot feed it alone it takes nothing where another can', async () => {
  const low = { ...culture('C'), animals: 40 }
  expect(await joined(room(['C'], [culture('A'), culture('B'), low]), [true, true, true])).toEqual([30, 0, 0])
})
