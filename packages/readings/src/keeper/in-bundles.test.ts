import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { inBundles } from './in-bundles.ts'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

function gathering(how: { everyMs?: number; enough?: number } = {}) {
  const passed: string[][] = []
  return { passed, ...inBundles<string>({ ...how, pass: (bundle) => passed.push(bundle) }) }
}

test('what comes in one turn goes together, and alone it waits for nobody', () => {
  const { passed, add } = gathering({ everyMs: 30 })
  add('a')
  add('b')
  expect(passed).toEqual([])
  vi.advanceTimersByTime(1)
  expect(passed).toEqual([['a', 'b']])
  vi.advanceTimersByTime(1000)
  add('c')
  vi.advanceTimersByTime(1)
  expect(passed).toEqual([['a', 'b'], ['c']])
})

test('what comes soon after the last waits for company, unless it is enough by itself', () => {
  const { passed, add } = gathering({ everyMs: 30, enough: 10 })
  add('a', 1)
  vi.advanceTimersByTime(1)
  add('b', 4)
  vi.advanceTimersByTime(20)
  add('c', 5)
  vi.advanceTimersByTime(5)
  expect(passed).toEqual([['a']])
  vi.advanceTimersByTime(5)
  expect(passed).toEqual([['a'], ['b', 'c']])
  add('d', 4)
  add('e', 6)
  vi.advanceTimersByTime(1)
  expect(passed).toEqual([['a'], ['b', 'c'], ['d', 'e']])
})

test('what has gathered can be passed on at once, and nothing goes twice', () => {
  const { passed, add, passNow } = gathering({ everyMs: 30 })
  passNow()
  expect(passed).toEqual([])
  add('a')
  passNow()
  add('b')
  passNow()
  vi.advanceTimersByTime(1000)
  expect(passed).toEqual([['a'], ['b']])
})
