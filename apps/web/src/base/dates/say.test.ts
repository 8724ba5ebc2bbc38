import { expect, test } from 'vitest'
import { daysSince } from './say.ts'

test('days are counted by midnights of the room, not by full days', () => {
  const laid = '2026-11-22T17:40:00.000Z'
  expect(daysSince(laid, '2026-11-22', 'America/Denver')).toBe(0)
  expect(daysSince(laid, '2026-11-25', 'America/Denver')).toBe(3)
  expect(daysSince('2026-11-22T05:00:00.000Z', '2026-11-25', 'America/Denver')).toBe(4)
})

test('a moment still to come is day 0', () => {
  expect(daysSince('2026-11-25T12:00:00.000Z', '2026-11-24', 'UTC')).toBe(0)
})
