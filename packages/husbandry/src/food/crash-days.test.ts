import { expect, test } from 'vitest'
import { crashDays, sharedCauses } from './crash-days.ts'
import { seedOf } from './seed-of.ts'

type Culture = Parameters<typeof sharedCauses>[0]
const culture = (id: string, given: Partial<Culture> = {}): Culture => ({
  ...{ id, concentrateId: null, parentCultureId: null, isBackup: true, airLine: null, shelf: null, tools: null },
  ...given,
})
const hazardPerDay = 0.02
const futures = 4000
const days = (...cultures: Culture[]) => crashDays({ cultures, hazardPerDay, futures })
const sharesOf = (...all: Culture[]) => sharedCauses(all[0]!, all).map(({ cultureId, causes }) => [cultureId, causes])

test('a seed is the FNV-1a of a name (draft-eastlake-fnv, test vectors of 32 bits)', () => {
  expect(['', 'a', 'foobar'].map(seedOf)).toEqual([0x811c9dc5, 0xe40c292c, 0xbf9cf968])
})

test('a culture crashes after 50 days in the mean where 2 in 100 do in a day, each in its own future', () => {
  const [of] = days(culture('a', { concentrateId: 'x' }))
  // Four standard errors of an exponential mean.
  expect(Math.abs(of!.reduce((sum, day) => sum + day, 0) / futures - 50)).toBeLessThan((4 * 50) / Math.sqrt(futures))
  expect(new Set(of).size).toBe(futures)
})

test('each cause that two share takes both in a tenth of the crashes of either', () => {
  const together = (given: Partial<Culture>) => {
    const [a, b] = days(culture('a', given), culture('b', given))
    return a!.filter((day, future) => day === b![future]).length / futures
  }
  const all = { concentrateId: 'x', parentCultureId: 'm', airLine: 'pump 1', shelf: 'top', tools: 'blue' }
  for (const [causes, given] of [
    [1, { shelf: 'top' }],
    [2, { isBackup: false, airLine: 'pump 1' }],
    [5, all],
  ] as const) {
    // Marshall & Olkin 1967, J. Am. Stat. Assoc. 62:30-44: P(X = Y) is the shared rate over that of either.
    const expected = (0.1 * causes) / (2 - 0.1 * causes)
    const error = Math.sqrt((expected * (1 - expected)) / futures)
    expect(Math.abs(together(given) - expected)).toBeLessThan(4 * error)
  }
})

test('what is shared goes by its word, and tools that nobody told of by one sieve for all but backups', () => {
  expect(
    sharesOf(culture('a', { shelf: 'Top ' }), culture('b', { shelf: 'top' }), culture('c', { shelf: 'low' })),
  ).toEqual([...[['b', ['shelf']]]])
  expect(sharesOf(culture('a', { tools: 'Blue' }), culture('b', { tools: ' blue' }), culture('c'))).toEqual([
    ...[['b', ['tools']]],
  ])
  const young = { isBackup: false }
  expect(sharesOf(culture('a', young), culture('b', young), culture('c'))).toEqual([['b', ['tools']]])
  // One word of two kinds is no thing that they share.
  expect(sharesOf(culture('a', { shelf: 'x', airLine: 'y' }), culture('b', { airLine: 'x', shelf: 'y' }))).toEqual([])
})

test('a line is one as far back as anybody knows, also through a mother that is gone, or a circle', () => {
  const [granny, mother, child] = [
    culture('granny'),
    culture('mother', { parentCultureId: 'granny' }),
    culture('child', { parentCultureId: 'mother' }),
  ]
  const parent = ['parent']
  expect(sharesOf(child, mother, granny)).toEqual([
    ['mother', parent],
    ['granny', parent],
  ])
  // Two of a mother that was ended.
  expect(sharesOf(child, culture('sister', { parentCultureId: 'mother' }))).toEqual([['sister', parent]])
  expect(sharesOf(child, granny)).toEqual([])
  const [a, b] = [culture('a', { parentCultureId: 'b' }), culture('b', { parentCultureId: 'a' })]
  expect(days(a, b)).toHaveLength(2)
})
