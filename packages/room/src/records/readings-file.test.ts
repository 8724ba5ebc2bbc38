import { describe, expect, test } from 'vitest'
import { readReadingsFile } from './readings-file.ts'

const nowMs = Date.parse('2026-04-10T12:00:00Z')
const file = { timeZone: 'Europe/Lisbon', locale: 'en-US', quantity: 'temperature' as const, nowMs }
const read = (text: string[], given: Partial<Parameters<typeof readReadingsFile>[1]> = {}) =>
  readReadingsFile(text.join('\n'), { ...file, ...given })
const meant = (text: string[], given: Parameters<typeof read>[1] = {}) => {
  const [line] = read(text, given)
  return 'problem' in line!.meant ? line!.meant.problem : [new Date(line!.meant.at).toISOString(), line!.meant.value]
}

describe('when a reading was', () => {
  test.each([
    ['at,value', '2026-04-10T09:30:00Z,25'],
    ['at,value', '2026-04-10T10:30:00+01:00,25'],
    // Seconds since 1970 (POSIX).
    ['timestamp,value', '1775813400,25'],
    // By the room's clock, an hour ahead of UTC in April.
    ['Date Time,Temperature', '2026-04-10 10:30,25'],
    ['datetime,value', '2026-04-10T10:30:00.250,25'],
    ['at,value', '4/10/2026 10:30:00,25'],
    ['date,time,value', '4/10/2026,10:30,25'],
    ['day,time,reading', '10.4.2026,10:30:00,25'],
  ])('is read of %s: %s', (header, line) => {
    expect(meant([header, line])).toEqual(['2026-04-10T09:30:00.000Z', 25])
  })

  test('has seconds, and one figure of an hour', () => {
    expect(meant(['date,time,value', '2026-04-10,7:30:15,25'])).toEqual(['2026-04-10T06:30:15.000Z', 25])
    expect(meant(['date,time,value', '2026-04-10,7:30,25'])).toEqual(['2026-04-10T06:30:00.000Z', 25])
    expect(meant(['date,time,value', '2026-04-09,23:59:59,25'])).toEqual(['2026-04-09T22:59:59.000Z', 25])
  })

  test.each([
    ['at,value', 'yesterday,25', '"yesterday" is no time'],
    ['at,value', '31.4.2026 10:30,25', '"31.4.2026" is no date'],
    ['date,value', '2026-04-10,25', '"" is no time of day'],
    ['date,time,value', '2026-04-10,24:00,25', '"24:00" is no time of day'],
    ['date,time,value', '2026-04-10,10:60,25', '"10:60" is no time of day'],
    ['date,time,value', '2026-04-10,10:30:60,25', '"10:30:60" is no time of day'],
    ['date,time,value', ',10:30,25', '"" is no date'],
    ['date,time,value', '2026-04-10,13:00:01,25', 'has not come yet'],
    ['at,value', '2026-04-10T12:00:01Z,25', 'has not come yet'],
  ])('is asked for in %s: %s', (header, line, said) => {
    expect(meant([header, line])).toContain(said)
  })

  test('may be now', () => {
    expect(meant(['at,value', '2026-04-10T12:00:00Z,25'])).toEqual(['2026-04-10T12:00:00.000Z', 25])
  })

  test('is told with its date where it has one, also of a line that is refused', () => {
    const lines = read([
      'date,time,value',
      '2026-04-09,7:30,25',
      '2026-04-09,99:30,25',
      '2027-04-09,7:30,25',
      'x,7:30,25',
    ])
    expect(lines.map(({ line, date }) => [line, date])).toEqual([
      [2, '2026-04-09'],
      [3, '2026-04-09'],
      [4, '2027-04-09'],
      [5, null],
    ])
  })
})

describe('what it read', () => {
  const inUnit = (line: string, given: Parameters<typeof read>[1] = {}) => {
    const said = meant(['at,value,unit', `2026-04-10T09:30:00Z,${line}`], given)
    return Array.isArray(said) ? said[1] : said
  }
  test('comes in the units that probes write', () => {
    // 77 F and 298.15 K are 25 C, by their definitions.
    expect([inUnit('77,F'), inUnit('25,'), inUnit('25.04,C')]).toEqual([25, 25, 25.04])
    expect(inUnit('298.15,K')).toBeCloseTo(25, 9)
    expect(meant(['at;value', '2026-04-10T09:30:00Z;25,4'])).toEqual(['2026-04-10T09:30:00.000Z', 25.4])
  })

  test('is refused where it is no number, of another unit, or of no water', () => {
    expect(inUnit(',')).toContain('"" is no number')
    expect(inUnit('warm,')).toContain('"warm" is no number')
    expect(inUnit('25,mV')).toMatch(/"mV" is no unit of temperature\. Write one of: Cel, C, /)
    expect(inUnit('77,')).toContain('outside -5 to 60')
    expect(inUnit('-6,')).toContain('outside -5 to 60')
    expect([inUnit('60,'), inUnit('-5,')]).toEqual([60, -5])
    expect(inUnit('14.1,', { quantity: 'ph' })).toContain('outside 0 to 14')
  })
})
