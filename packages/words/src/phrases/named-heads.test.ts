import { expect, test } from 'vitest'
import { namesItsHeads } from './named-heads.ts'

test('a number of animals stands alone where the words behind it say what they are', () => {
  const link = (label: string, unit: 'animals' | 'days' = 'animals') => ({ label, quantity: { value: 200, unit } })
  expect(
    ['larvae by the book', 'rotifers to keep', 'Artemia to start a feed with'].map((one) => namesItsHeads(link(one))),
  ).toEqual([true, true, true])
  // "1,200 animals wanted"; "11 days old when rotifers end".
  expect([namesItsHeads(link('wanted')), namesItsHeads(link('old when rotifers end'))]).toEqual([false, false])
  expect(namesItsHeads(link('larvae looked at', 'days'))).toBe(false)
  expect(namesItsHeads({ label: 'larvae', quantity: null })).toBe(false)
})
