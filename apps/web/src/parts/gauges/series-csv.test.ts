import { expect, test } from 'vitest'
import { seriesCsv } from './series-csv.ts'

test('a series is a table with its extremes, in the unit that is kept', () => {
  const points = [{ at: '2026-11-29T07:00:00.000Z', low: 25, high: 26.5, mean: 25.75, number: 60 }]
  expect(seriesCsv({ key: 't1', unit: 'degC' }, { points }).split('\r\n')).toEqual([
    'gauge,at,low,mean,high,readings',
    't1,2026-11-29T07:00:00.000Z,25,25.75,26.5,60',
    '# degC',
    '',
  ])
})
