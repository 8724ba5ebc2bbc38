import { describe, expect, test } from 'vitest'
import { factFiles } from './fact-files.ts'
import { csvOf, whenCells } from './file-cells.ts'
import { readDate } from './read-date.ts'

describe('cells of a file', () => {
  test('have six figures and the mark that was asked for, and nothing for nothing', () => {
    const row = ['R1, the large', 1_234_567.8, 0.123_456_78, 2.5, null, undefined, 0]
    expect(csvOf([row], 'point')).toBe('"R1, the large",1234570,0.123457,2.5,,,0\r\n')
    expect(csvOf([row], 'comma')).toBe('R1, the large;1234570;0,123457;2,5;;;0\r\n')
  })
  test('are no formulas (CWE-1236)', () => {
    expect(csvOf([['=1+1', '+1', '@a', 'a=b']], 'point')).toBe("'=1+1,'+1,'@a,a=b\r\n")
  })
  test('have the date and hour of the room’s clock', () => {
    const at = new Date('2026-04-10T23:30:00Z')
    expect(whenCells('Europe/Lisbon', at)).toEqual(['2026-04-11', '00:30'])
    expect(whenCells('UTC', at)).toEqual(['2026-04-10', '23:30'])
  })
})

describe('what an export says of', () => {
  const names = {
    person: (userId: string | null) => `person ${userId}`,
    thing: (id: string | undefined) => (id === undefined ? undefined : `thing ${id}`) as string,
  }
  const cells = (what: keyof typeof factFiles, data: object) =>
    Object.fromEntries(
      factFiles[what]
        .cells({ data, recordedBy: 'ana' } as never, names)
        .map((cell, index) => [factFiles[what].headers[index], cell]),
    )
  test('a count is what was counted, and what follows of it for a millilitre', () => {
    const count = { of: 'culture', animals: [60, 66, 75], volumeMl: 0.5, dilution: 2, eggs: 30, females: 100 }
    // 67 on average in half a millilitre that was thinned to a half: 268 per mL.
    expect(cells('counts', count)).toMatchObject({
      ...{ of: 'culture', samples: '60 66 75', volume_ml: 0.5, dilution: 2, eggs: 30, females: 100, per_ml: 268 },
      recorded_by: 'person ana',
    })
    expect(cells('counts', { of: 'larvae', animals: [180] })).toMatchObject({ samples: '180', per_ml: null })
  })
  test('a feeding is the amount, and the culture or the bottle that it came from', () => {
    const [r1, bottle] = ['00000000-0000-7000-8000-000000000001', '00000000-0000-7000-8000-000000000002']
    const of = (data: object) => cells('feedings', data)
    expect(of({ food: 'rotifers', fromCultureId: r1, animals: 5e5 })).toMatchObject({
      ...{ food: 'rotifers', from: `thing ${r1}`, animals: 5e5, recorded_by: 'person ana' },
    })
    expect(of({ food: 'concentrate', concentrateId: bottle, amountMl: 2.4 })).toMatchObject({
      ...{ from: `thing ${bottle}`, amount_ml: 2.4, amount_g: undefined },
    })
  })
  test('a loss is its number with its cause, and why it was more than the book said', () => {
    expect(cells('losses', { of: 'larvae', number: 3, cause: 'white', beyondBook: 'two nights' })).toEqual({
      ...{
        of: 'larvae',
        number: 3,
        cause: 'white',
        why_more_than_the_book_said: 'two nights',
        recorded_by: 'person ana',
      },
    })
  })
})

test('a date is read as it is written here, and the month first only where a locale writes a stroke so', () => {
  const dates = (text: string) => ['en-GB', 'de-DE', 'en-US'].map((locale) => readDate(text, locale))
  expect(dates('2026-3-9')).toEqual(['2026-03-09', '2026-03-09', '2026-03-09'])
  expect(dates('9.3.2026')).toEqual(['2026-03-09', '2026-03-09', '2026-03-09'])
  expect(dates('9/3/2026')).toEqual(['2026-03-09', '2026-03-09', '2026-09-03'])
  expect(dates('28/3/2026')).toEqual(['2026-03-28', '2026-03-28', null])
  for (const text of [
    '9.3/2026',
    '9.3.26',
    '2026-03',
    'x2026-03-09',
    '2026-03-09x',
    '2026-02-30',
    '',
    'x9.3.2026',
    '9.3.20261',
  ])
    expect(dates(text)).toEqual([null, null, null])
})
