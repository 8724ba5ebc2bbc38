import fc from 'fast-check'
import { expect, test } from 'vitest'
import { hasAny, NameNumbers } from './name-bits.ts'

const name = fc.integer({ min: 0, max: 99 }).map((number) => `name ${number}`)
const some = fc.array(name, { maxLength: 40 })

test('a union holds what was put in and what its parts hold, and nothing else, whatever names came later', () => {
  fc.assert(
    fc.property(some, some, some, some, (early, late, own, asked) => {
      const names = new NameNumbers()
      const [a, b] = [names.union(early, []), names.union(late, [])]
      const all = names.union(own, [a, b])
      const held = new Set([...early, ...late, ...own])
      const numbers = asked.map((each) => names.of(each))
      expect(hasAny(all, numbers)).toBe(asked.some((each) => held.has(each)))
    }),
  )
})

test('a name keeps its number', () => {
  const names = new NameNumbers()
  expect(['a', 'b', 'a'].map((each) => names.of(each))).toEqual([0, 1, 0])
  expect(names.size).toBe(2)
})
