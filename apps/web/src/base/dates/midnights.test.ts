import { describe, expect, it } from 'vitest'
import { midnightsBetween } from './midnights.ts'

const between = (from: string, until: string, timeZone: string) =>
  midnightsBetween(new Date(from), new Date(until), timeZone).map((at) => new Date(at).toISOString())

describe('midnights of the room', () => {
  // Europe/Lisbon: clocks go back on 2026-10-25 at 02:00 (IANA time zone database, rule EU)
  it('are those of its own zone, each once, also where a day has 25 hours', () => {
    expect(between('2026-10-24T10:00:00Z', '2026-10-27T10:00:00Z', 'Europe/Lisbon')).toEqual([
      '2026-10-24T23:00:00.000Z',
      '2026-10-26T00:00:00.000Z',
      '2026-10-27T00:00:00.000Z',
    ])
  })

  // America/Asuncion: 2023-10-01 began at 01:00, -03:00 (IANA time zone database, rule Para)
  it('are where the day begins when it has no midnight', () => {
    expect(between('2023-09-30T12:00:00Z', '2023-10-01T12:00:00Z', 'America/Asuncion')).toEqual([
      '2023-10-01T04:00:00.000Z',
    ])
  })

  it('count an end that is one itself', () => {
    expect(between('2026-11-25T00:00:00Z', '2026-11-26T00:00:00Z', 'UTC')).toEqual([
      '2026-11-25T00:00:00.000Z',
      '2026-11-26T00:00:00.000Z',
    ])
  })
})
