import { expect, test } from 'vitest'
import { flawIn } from './flaw.ts'

const nested = (levels: number) => JSON.parse(`${'['.repeat(levels)}${']'.repeat(levels)}`)

test('an honest body has no flaw', () => {
  expect(flawIn({ name: 'Größe 🐠', list: [1, 'two', null, true], inner: { a: [{ b: '' }] } })).toBeNull()
  for (const value of [undefined, null, '', 0, []]) expect(flawIn(value)).toBeNull()
})

test.each([
  ['a zero byte', { list: ['a\u0000b'] }],
  ['half a character pair', { list: ['\ud800'] }],
  ['a zero byte in a name', { inner: { 'a\u0000': 1 } }],
])('%s cannot be kept', (_what, value) => {
  expect(flawIn(value)).toMatch(/cannot be kept/)
})

test('thirty levels pass and thirty-one do not', () => {
  expect(flawIn(nested(30))).toBeNull()
  expect(flawIn(nested(31))).toMatch(/nested deeper/)
})

test('five thousand values pass and one more does not, however they are spread', () => {
  const names = (number: number) => Object.fromEntries(Array.from({ length: number }, (_, index) => [`k${index}`, 1]))
  expect(flawIn(names(5000))).toBeNull()
  expect(flawIn(names(5001))).toMatch(/more than 5000 values/)
  expect(flawIn([Array(2500).fill(0), Array(2500).fill(0)])).toMatch(/more than 5000 values/)
})
