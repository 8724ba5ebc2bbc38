import { eggLookLacks } from '@fryward/shared'
import { expect, test } from 'vitest'
import { sayEggLookLacks } from './say-egg-look.ts'

test('what a room lacks for eggs is told with what would change it, all of it where more is lacking', () => {
  expect(sayEggLookLacks(['larval_tank'])).toEqual({
    why: 'Every larval tank holds larvae, or is wanted for eggs that are to be raised.',
    until: 'They are looked for again once a larval tank is emptied or added.',
  })
  const { why, until } = sayEggLookLacks(['grow_out', 'nauplii'])
  expect(why).toMatch(/grow-out has\. The copepods/)
  expect(until).toBe(
    'They are looked for again once fish leave grow-out or it gets another tank, and once a count of the copepods finds nauplii enough.',
  )
  expect(new Set(eggLookLacks.map((lack) => sayEggLookLacks([lack]).why)).size).toBe(3)
})
