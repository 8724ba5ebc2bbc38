import { expect, test } from 'vitest'
import { hoursBetween } from './hours.ts'

test('quarters of a day count from midnight of the zone, also of one at a quarter to', () => {
  const [from, until] = [new Date('2026-03-10T00:00:00Z'), new Date('2026-03-11T00:00:00Z')]
  const hours = (timeZone: string) =>
    hoursBetween(from, until, { timeZone, everyMinutes: 360 }).map((at) => at.slice(5, 16))
  expect(hours('Europe/Lisbon')).toEqual(['03-10T00:00', '03-10T06:00', '03-10T12:00', '03-10T18:00', '03-11T00:00'])
  expect(hours('Asia/Kathmandu')).toEqual(['03-10T00:15', '03-10T06:15', '03-10T12:15', '03-10T18:15'])
})
