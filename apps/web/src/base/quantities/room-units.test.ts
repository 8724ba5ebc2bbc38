import { expect, test } from 'vitest'
import { toShown } from './room-units.ts'

test('one of a thing is said in the singular', () => {
  expect(toShown({ value: 1, unit: 'days' }, 'metric').label).toBe('day')
  expect(toShown({ value: 2, unit: 'days' }, 'metric').label).toBe('days')
  expect(toShown({ value: 0, unit: 'days' }, 'metric').label).toBe('days')
  expect(toShown({ value: 1, unit: 'samples' }, 'us').label).toBe('sample')
  expect(toShown({ value: 1, unit: 'mL' }, 'metric').label).toBe('mL')
})
