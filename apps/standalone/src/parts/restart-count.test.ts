import { expect, test } from 'vitest'
import { RestartCount } from './restart-count.ts'

const after = (count: RestartCount, ranMs: number, times: number) =>
  Array.from({ length: times }, () => count.next(ranMs))

test('a part that keeps ending is started again for ever, at most half a minute later', () => {
  expect(after(new RestartCount(), 1000, 12)).toEqual([
    250, 500, 1000, 2000, 4000, 8000, 16_000, 30_000, 30_000, 30_000, 30_000, 30_000,
  ])
})

test('five minutes without a crash wipe out what was before', () => {
  const count = new RestartCount()
  after(count, 1000, 6)
  expect([count.next(5 * 60_000 + 1), count.inARow]).toEqual([250, 1])
})
