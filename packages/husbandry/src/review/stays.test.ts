import { expect, test } from 'vitest'
import { tankOn, tanksBetween } from './stays.ts'

const batch = { id: 'b', tankId: 'now' }
const stay = (tankId: string, day: number, hour = '07', subjectId = 'b') => ({
  ...{ subjectId, tankId, since: `2026-03-${String(day).padStart(2, '0')}T${hour}:00:00.000Z` },
})
const date = (day: number) => `2026-03-${String(day).padStart(2, '0')}`
const room = {
  timeZone: 'UTC',
  stays: [stay('slip', 5), stay('first', 5, '09'), stay('other', 7, '07', 'c'), stay('second', 9), stay('third', 14)],
}

test('a batch was in the tank that was last written by the end of a day', () => {
  expect([4, 5, 8, 9, 13, 14, 30].map((day) => tankOn(room, batch, date(day)))).toEqual([
    // Before anything was written it was where it was first said to be.
    ...['slip', 'first', 'first', 'second', 'second', 'third', 'third'],
  ])
  expect(tankOn({ ...room, stays: [] }, batch, date(5))).toBe('now')
})

test('between two days it was in those from the first to the last, each once', () => {
  const between = (from: number, to: number) => tanksBetween(room, batch, { from: date(from), to: date(to) })
  expect([between(5, 8), between(5, 9), between(9, 13), between(6, 20)]).toEqual([
    ...[['first'], ['first', 'second'], ['second'], ['first', 'second', 'third']],
  ])
  const back = { ...room, stays: [...room.stays, stay('first', 20)] }
  expect(tanksBetween(back, batch, { from: date(6), to: date(22) })).toEqual(['first', 'second', 'third'])
})
