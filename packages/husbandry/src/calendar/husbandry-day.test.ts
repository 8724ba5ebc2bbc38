import { describe, expect, test } from 'vitest'
import { addMinutes, elapsedDays } from './elapsed.ts'
import { addDays, daysBetween, husbandryDay, localDate } from './husbandry-day.ts'

const room = (timeZone: string, at = '07:00') => ({
  timeZone,
  lightsOnAt: '07:00',
  lightsOffAt: '19:00',
  rounds: [{ id: 'morning', name: 'Morning', at }],
})

describe('a day in the room’s own time zone', () => {
  test('starts and ends at local midnight', () => {
    const day = husbandryDay({ room: room('America/New_York'), date: '2026-01-15' })
    expect([day.startsAt, day.endsAt]).toEqual(['2026-01-15T05:00:00.000Z', '2026-01-16T05:00:00.000Z'])
    expect(day.rounds[0]?.startsAt).toBe('2026-01-15T12:00:00.000Z')
  })

  test('is 23 hours when clocks go forward and 25 when they go back', () => {
    const hours = (date: string) => {
      const { startsAt, endsAt } = husbandryDay({ room: room('Europe/Lisbon'), date })
      return elapsedDays(startsAt, endsAt) * 24
    }
    expect([hours('2026-03-29'), hours('2026-10-25'), hours('2026-06-01')]).toEqual([23, 25, 24])
  })

  test('a round that the clocks skip starts when they have jumped', () => {
    // 01:30 does not exist in Lisbon on 29 March 2026: it is 02:30 by the new time, 01:30 UTC.
    const day = husbandryDay({ room: room('Europe/Lisbon', '01:30'), date: '2026-03-29' })
    expect(day.rounds[0]?.startsAt).toBe('2026-03-29T01:30:00.000Z')
  })

  test('a midnight that does not exist gives way to the first instant that does', () => {
    // Beirut skips from 00:00 to 01:00 on the last Sunday of March.
    const day = husbandryDay({ room: room('Asia/Beirut'), date: '2026-03-29' })
    expect(localDate({ timeZone: 'Asia/Beirut', at: day.startsAt })).toBe('2026-03-29')
    expect(elapsedDays(day.startsAt, day.endsAt) * 24).toBe(23)
  })

  test('dates and instants are counted without a zone’s help', () => {
    expect(addDays('2026-02-28', 1)).toBe('2026-03-01')
    expect(daysBetween('2026-03-10', '2026-02-28')).toBe(-10)
    expect(addMinutes('2026-03-10T23:50:00.000Z', 20)).toBe('2026-03-11T00:10:00.000Z')
    expect(localDate({ timeZone: 'Pacific/Apia', at: '2026-03-10T12:00:00.000Z' })).toBe('2026-03-11')
  })
})
