import { expect, test } from 'vitest'
import { recently } from './recently.ts'

const sam = { kind: 'person' as const, userId: 'sam', name: 'Sam' }

function counted() {
  let asked = 0
  return {
    asked: () => asked,
    lookUp: async () => {
      asked += 1
      return sam
    },
  }
}

test('those who come at once with one cookie are looked up once, and again when a second has passed', async () => {
  let now = 0
  const recent = recently(() => now)
  const { asked, lookUp } = counted()
  expect(await Promise.all([1, 2, 3].map(() => recent.find('a', lookUp)))).toEqual([sam, sam, sam])
  now = 999
  await recent.find('a', lookUp)
  expect(asked()).toBe(1)
  now = 1000
  await recent.find('a', lookUp)
  expect(asked()).toBe(2)
  await recent.find('b', lookUp)
  expect(asked()).toBe(3)
})

test('nobody is remembered whom the look-up did not find, and nobody after all are forgotten', async () => {
  const recent = recently(() => 0)
  const { asked, lookUp } = counted()
  const refused = recent.find('a', () => Promise.reject(new Error('nobody')))
  await expect(refused).rejects.toThrow('nobody')
  expect(await recent.find('a', lookUp)).toBe(sam)
  recent.forgetAll()
  await recent.find('a', lookUp)
  expect(asked()).toBe(2)
})
