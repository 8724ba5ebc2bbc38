import { expect, test } from 'vitest'
import { LatestByKey } from './latest-by-key.ts'

test('a thing put in anew takes the place of the old one, whichever half that lay in', () => {
  for (let others = 0; others <= 20; others += 1) {
    const kept = new LatestByKey<{ count: number }>(10)
    const putIn = (from: number) => {
      for (let index = 0; index < others; index += 1) kept.set(`other ${from + index}`, { count: 0 })
    }
    kept.set('a', { count: 1 })
    putIn(0)
    kept.set('a', { count: 2 })
    expect(kept.get('a'), `${others} others`).toEqual({ count: 2 })
    putIn(100)
    expect([undefined, 2], `${others} others, twice`).toContain(kept.get('a')?.count)
  }
})

test('what nobody put in is not there', () => {
  expect(new LatestByKey<object>(10).get('a')).toBeUndefined()
})
