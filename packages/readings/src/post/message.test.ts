import { describe, expect, test } from 'vitest'
import { readMessage } from './message.ts'

const nowMs = Date.parse('2026-03-10T08:00:00Z')
const told = (text: string, how: { gauge?: string; isLate?: boolean } = {}) => {
  const { readings, refused } = readMessage({ text, nowMs, ...how })
  return [
    ...readings.map(({ gauge, at, value, unit }) => [gauge, (at - nowMs) / 1000, value, unit]),
    ...refused.map(({ gauge, reason }) => [gauge, reason]),
  ]
}
const ofGauge = { gauge: 't1' }

describe('a message at the topic of a gauge', () => {
  test('is a number alone, of now', () => {
    for (const text of ['25.4', ' 25.4\n', '+25.4', '2.54e1'])
      expect(told(text, ofGauge)).toEqual([['t1', 0, 25.4, null]])
  })
  test('may bring its time and unit as JSON or SenML, and need not name the gauge', () => {
    expect(told('{"value":78.8,"unit":"F","at":"2026-03-10T07:59:00Z"}', ofGauge)).toEqual([['t1', -60, 78.8, 'F']])
    expect(told('[{"u":"Cel","v":23.1,"t":-5}]', ofGauge)).toEqual([['t1', -5, 23.1, 'Cel']])
  })
})

describe('a message at the topic of a device', () => {
  test('is a post like any other', () => {
    expect(told('[{"gauge":"t1","value":25},{"gauge":"t2","value":8}]')).toEqual([
      ['t1', 0, 25, null],
      ['t2', 0, 8, null],
    ])
    expect(told('[{"bn":"rack/","bt":1773129540,"n":"t1","v":25}]')).toEqual([['rack/t1', -60, 25, null]])
  })
  test('is refused where it is a number that names no gauge', () => {
    expect(() => told('25.4')).toThrow(/^A number alone goes to the topic of its device, a slash/)
  })
})

test('what waited at the broker is kept where it brings its time, and of no time where it does not', () => {
  const late = { ...ofGauge, isLate: true }
  expect(told('25.4', late)).toEqual([['t1', 'no_time']])
  expect(told('[{"v":23.1,"t":-5}]', late)).toEqual([['t1', 'no_time']])
  expect(told('{"value":25,"at":"2026-03-10T07:00:00Z"}', late)).toEqual([['t1', -3600, 25, null]])
})

test('garbage is quoted, as far as it can be read', () => {
  for (const [text, sentence] of [
    ['', 'The message is empty.'],
    ['nan', '"nan" is neither a number nor JSON.'],
    ['\u0000\u0001ab', '"??ab" is neither a number nor JSON.'],
    ['x'.repeat(100), `"${'x'.repeat(40)}" is neither a number nor JSON.`],
  ] as const)
    expect(() => told(text, ofGauge), text).toThrow(sentence)
  expect(() => told('"25.4"', ofGauge)).toThrow(/^Send one reading as/)
})
