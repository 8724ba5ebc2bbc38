import { describe, expect, test } from 'vitest'
import { RoomError } from '../errors.ts'
import { type CountLine, readCountsFile } from './counts-file.ts'

const things = [
  { id: 'r1', kind: 'culture' as const, name: 'R1' },
  { id: 'c1', kind: 'clutch' as const, name: 'Clutch 1' },
  { id: 'b1', kind: 'larval_batch' as const, name: 'Batch 1' },
  { id: 'g1', kind: 'juvenile_group' as const, name: 'Group 1' },
  { id: 't1', kind: 'tank' as const, name: 'Tank 1' },
]
// Lisbon is an hour ahead of UTC from the end of March on.
const file = { timeZone: 'Europe/Lisbon', locale: 'en-GB', things }
const lines = (...text: string[]): CountLine[] => readCountsFile(text.join('\n'), file)
const meantOf = (header: string, cells: string) => lines(header, cells)[0]!.meant

describe('a line of a notebook', () => {
  test('is a count of its thing at the time of the room', () => {
    const [first, second] = lines(
      'date,time,thing,of,samples,volume_ml,dilution,eggs,females,length_mm',
      '2026-03-10,7:05,r1,,60 66,0.5,2,30,100,',
      '10.04.2026,,Batch 1,larvae,180,,,,,4.5',
    )
    expect(first).toMatchObject({ line: 2, thing: { id: 'r1' }, date: '2026-03-10' })
    expect(first?.meant).toEqual({
      at: '2026-03-10T07:05:00.000Z',
      data: { of: 'culture', animals: [60, 66], volumeMl: 0.5, dilution: 2, eggs: 30, females: 100 },
    })
    // Eight in the morning where no time is said.
    expect(second).toMatchObject({ line: 3, thing: { id: 'b1' }, date: '2026-04-10' })
    expect(second?.meant).toEqual({
      at: '2026-04-10T07:00:00.000Z',
      data: { of: 'larvae', animals: [180], lengthMm: 4.5 },
    })
  })

  test('is of what such a thing is counted for, where it does not say', () => {
    const usual = ['R1', 'Clutch 1', 'Batch 1', 'Group 1', 'Tank 1'].map((name) =>
      meantOf('date,thing,samples', `2026-03-10,${name},5`),
    )
    expect(usual.map((meant) => ('data' in meant ? meant.data.of : meant.problem))).toEqual([
      ...['culture', 'eggs', 'larvae', 'juveniles'],
      expect.stringMatching(/Say what was counted in the column "of": one of culture, /),
    ])
    expect(meantOf('date,thing,of,samples', '2026-03-10,R1,whales,5')).toHaveProperty('problem')
  })

  test('has samples by any mark between them', () => {
    for (const samples of ['60 66 71', '60/66/71', '60+66 +  71', ' 60  66 71 '])
      expect(meantOf('date,thing,samples', `2026-03-10,R1,${samples}`)).toMatchObject({
        data: { animals: [60, 66, 71] },
      })
    expect(meantOf('date,thing,samples', '2026-03-10,R1,0')).toMatchObject({ data: { animals: [0] } })
  })

  test.each([
    ['2026-02-30,08:00,R1,5,1', '"2026-02-30" is no date'],
    [',08:00,R1,5,1', '"" is no date'],
    ['2026-03-10,08:00,R9,5,1', 'called "R9"'],
    ['2026-03-10,24:00,R1,5,1', '"24:00" is no time'],
    ['2026-03-10,07:60,R1,5,1', '"07:60" is no time'],
    ['2026-03-10,x07:30,R1,5,1', '"x07:30" is no time'],
    ['2026-03-10,07:301,R1,5,1', '"07:301" is no time'],
    ['2026-03-10,08:00,R1,,1', '"" are no samples'],
    ['2026-03-10,08:00,R1,5 6.5,1', '"5 6.5" are no samples'],
    ['2026-03-10,08:00,R1,5 -6,1', '"5 -6" are no samples'],
    ['2026-03-10,08:00,R1,5,a drop', '"a drop" in volume_ml is no number'],
  ])('that cannot be one says why: %s', (cells, said) => {
    const meant = meantOf('date,time,thing,samples,volume_ml', cells)
    expect('problem' in meant && meant.problem).toContain(said)
  })

  test('may be from the last minute before midnight', () => {
    expect(meantOf('date,time,thing,samples', '2026-03-10,23:59,R1,5')).toMatchObject({
      at: '2026-03-10T23:59:00.000Z',
    })
  })
})

describe('a file', () => {
  test('names its columns as notebooks do, in any order, and others are passed over', () => {
    expect(lines('Counts,ML,Day,Vessel,weather', '60,2,2026-03-10,R1,rain')[0]?.meant).toMatchObject({
      data: { animals: [60], volumeMl: 2 },
    })
    for (const thing of ['culture', 'tank', 'batch', 'name', 'vessel', 'THING'])
      for (const samples of ['count', 'counts', 'animals', 'number', 'Samples '])
        expect(meantOf(`date,${thing},${samples},volume`, '2026-03-10,R1,60,2')).toMatchObject({
          data: { animals: [60], volumeMl: 2 },
        })
    expect(meantOf('date,thing,samples,Length mm', '2026-03-10,R1,5,4')).toMatchObject({ data: { lengthMm: 4 } })
    expect(meantOf('date,thing,samples,length-mm', '2026-03-10,R1,5,4')).toMatchObject({ data: { lengthMm: 4 } })
  })

  test('with semicolons or tabs between cells is the same; semicolons leave the comma to numbers', () => {
    expect(lines('date;thing;samples;volume_ml', '2026-03-10;R1;60;0,5')[0]?.meant).toMatchObject({
      data: { volumeMl: 0.5 },
    })
    expect(lines('date\tthing\tsamples\tvolume_ml', '2026-03-10\tR1\t60\t0.5')[0]?.meant).toMatchObject({
      data: { volumeMl: 0.5 },
    })
    // With commas between cells a number has a point.
    expect(meantOf('date,thing,samples,volume_ml', '2026-03-10,R1,60,"0,5"')).toHaveProperty('problem')
  })

  test('may have a byte order mark, empty lines and short ones, and each line is told with its number', () => {
    const read = lines('\ufeffdate,thing,samples,volume_ml', '', '2026-03-10,R1,60', '2026-03-11,R1,61,1,2')
    expect(read.map(({ line, text }) => [line, text])).toEqual([
      [3, '2026-03-10,R1,60'],
      [4, '2026-03-11,R1,61,1,2'],
    ])
    expect(read.map(({ meant }) => 'data' in meant && meant.data)).toEqual([
      { of: 'culture', animals: [60] },
      { of: 'culture', animals: [61], volumeMl: 1 },
    ])
  })

  test('without the columns that are needed is refused with those that are lacking', () => {
    const refused = (text: string) => {
      try {
        return readCountsFile(text, file)
      } catch (error) {
        return error instanceof RoomError ? error.fields?.[0]?.message : error
      }
    }
    expect(refused('date,volume_ml\n')).toMatch(/It lacks: thing, samples\. Of these at least date, thing and samples /)
    expect(refused('')).toMatch(/It lacks: date, thing, samples\./)
    expect(refused('date,thing,samples\n2026-03-10,"R1,5')).toMatch(/cannot be read .* \(line 2\)/)
  })
})
