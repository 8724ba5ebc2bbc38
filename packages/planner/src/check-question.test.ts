import { expect, test } from 'vitest'
import { assertQuestion } from './check-question.ts'
import type { FoodQuestion, Future, PlanCulture } from './question.ts'

const growth = [
  { gain: 2, crowding: 0 },
  { gain: 2, crowding: 0 },
]
const culture: PlanCulture = {
  ...{ id: 'A', food: 'rotifers', volumeL: 0.5, animals: 100, growth, floorAnimals: 0, mostShare: 1 },
  ...{ goneShare: 0, thinnedToAnimals: 0, firstDay: 0, use: 'free' },
}
const eater = { id: 'B', food: 'rotifers', wanted: [0, 10], fedFrom: [] }
const future: Future = { cultures: [{ animals: 0, growth }], wanted: [[0, 10]] }
const sound: FoodQuestion = { days: 2, cultures: [culture], eaters: [eater], sievingLoss: 0.9, futures: [future] }

const withCulture = (given: Partial<PlanCulture>): FoodQuestion => ({ ...sound, cultures: [{ ...culture, ...given }] })
const withFuture = (given: Partial<Future>): FoodQuestion => ({ ...sound, futures: [{ ...future, ...given }] })

test('a question at the ends of what is allowed is one', () => {
  expect(() => assertQuestion(sound)).not.toThrow()
  expect(() => assertQuestion({ days: 42, cultures: [], eaters: [], sievingLoss: 0 })).not.toThrow()
})

test.each<[string, FoodQuestion]>([
  ['days is 1.5; allowed: a whole number', { ...sound, days: 1.5 }],
  ['days is 0; allowed: from 1 to 42', { ...sound, days: 0 }],
  ['days is 43; allowed: from 1 to 42', { ...sound, days: 43 }],
  ['sievingLoss is 1; allowed: from 0 to 0.9', { ...sound, sievingLoss: 1 }],
  ['sievingLoss is NaN', { ...sound, sievingLoss: Number.NaN }],
  ['futures.length is 1001; allowed: from 0 to 1000', { ...sound, futures: new Array<Future>(1001).fill(future) }],
  ['eaters is B; allowed: each id once', { ...sound, eaters: [eater, eater] }],
  ['cultures[0].volumeL is 0; allowed: litres above 0', withCulture({ volumeL: 0 })],
  ['cultures[0].volumeL is NaN', withCulture({ volumeL: Number.NaN })],
  ['cultures[0].volumeL is Infinity', withCulture({ volumeL: Number.POSITIVE_INFINITY })],
  ['cultures[0].animals is -1; allowed: a number from 0 up', withCulture({ animals: -1 })],
  ['cultures[0].animals is Infinity', withCulture({ animals: Number.POSITIVE_INFINITY })],
  ['cultures[0].floorAnimals is -1', withCulture({ floorAnimals: -1 })],
  ['cultures[0].firstDay is -1', withCulture({ firstDay: -1 })],
  ['cultures[0].mostShare is -0.1; allowed: from 0 to 1', withCulture({ mostShare: -0.1 })],
  ['cultures[0].goneShare is 1.1; allowed: from 0 to 1', withCulture({ goneShare: 1.1 })],
  ['cultures[0].thinnedToAnimals is -1', withCulture({ thinnedToAnimals: -1 })],
  ['cultures[0].growth.length is 1; allowed: 2', withCulture({ growth: growth.slice(1) })],
  ['cultures[0].growth[1].gain is -1', withCulture({ growth: [growth[0]!, { gain: -1, crowding: 0 }] })],
  ['cultures[0].growth[1].crowding is -1', withCulture({ growth: [growth[0]!, { gain: 1, crowding: -1 }] })],
  ['eaters[0].wanted[1] is NaN', { ...sound, eaters: [{ ...eater, wanted: [0, Number.NaN] }] }],
  ['futures[0].cultures.length is 0; allowed: 1', withFuture({ cultures: [] })],
  ['futures[0].wanted.length is 2; allowed: 1', withFuture({ wanted: [[], []] })],
  ['futures[0].wanted[0].length is 1; allowed: 2', withFuture({ wanted: [[1]] })],
  ['futures[0].cultures[0].animals is -1', withFuture({ cultures: [{ animals: -1, growth }] })],
  ['futures[0].cultures[0].growth.length is 0', withFuture({ cultures: [{ animals: 1, growth: [] }] })],
])('it is said that %s', (sentence, question) => {
  expect(() => assertQuestion(question)).toThrow(sentence)
})

test.each<[string, FoodQuestion]>([
  ['days is 1.5; allowed: a whole number', { ...sound, days: 1.5 }],
  ['sievingLoss is -0.1; allowed: from 0 to 0.9', { ...sound, sievingLoss: -0.1 }],
  ['sievingLoss is 0.91; allowed: from 0 to 0.9', { ...sound, sievingLoss: 0.91 }],
  ['cultures is A; allowed: each id once', { ...sound, cultures: [culture, culture] }],
  ['cultures[0].mostShare is 1.1; allowed: from 0 to 1', withCulture({ mostShare: 1.1 })],
  ['cultures[0].goneShare is -0.1; allowed: from 0 to 1', withCulture({ goneShare: -0.1 })],
  ['cultures[1].volumeL is 0', { ...sound, cultures: [culture, { ...culture, id: 'B', volumeL: 0 }] }],
  ['eaters[0].wanted.length is 1; allowed: 2', { ...sound, eaters: [{ ...eater, wanted: [0] }] }],
  ['futures[0].wanted[0][1] is -1; allowed: a number from 0 up', withFuture({ wanted: [[0, -1]] })],
  [
    'futures[0].cultures[0].growth[0].gain is NaN',
    withFuture({ cultures: [{ animals: 0, growth: [{ gain: Number.NaN, crowding: 0 }, growth[1]!] }] }),
  ],
])('and that %s', (sentence, question) => {
  expect(() => assertQuestion(question)).toThrow(sentence)
})

test('a thousand futures may be tried, of cultures that are thinned to nothing, from a day of their own, or not at all', () => {
  expect(() => assertQuestion({ ...sound, futures: new Array<Future>(1000).fill(future) })).not.toThrow()
  expect(() => assertQuestion(withCulture({ thinnedToAnimals: 0, mostShare: 0, goneShare: 1 }))).not.toThrow()
  expect(() => assertQuestion(withCulture({ thinnedToAnimals: null, firstDay: 41 }))).not.toThrow()
})
