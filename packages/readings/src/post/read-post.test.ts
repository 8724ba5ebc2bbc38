import { describe, expect, test } from 'vitest'
import { UnreadablePost } from './posted.ts'
import { readPost } from './read-post.ts'

const nowMs = Date.parse('2026-03-10T08:00:00Z')
const read = (type: string, body: unknown) =>
  readPost({ type, body: typeof body === 'string' ? body : JSON.stringify(body), nowMs })
const senml = (body: unknown) => read('application/senml+json', body)
const told = ({ readings }: ReturnType<typeof readPost>) =>
  readings.map(({ gauge, at, value, unit }) => [gauge, (at - nowMs) / 1000, value, unit])

describe('plain JSON', () => {
  const plain = (body: unknown) => read('application/json', body)
  test('is one reading, a list, or a list under its name; without a time it is of now', () => {
    const reading = { gauge: 't1', value: 25.4 }
    for (const body of [reading, [reading], { readings: [reading] }])
      expect(told(plain(body))).toEqual([['t1', 0, 25.4, null]])
  })
  test('a time is an instant with its zone or seconds since 1970', () => {
    const times = ['2026-03-10T07:59:00Z', '2026-03-10T08:59:00+01:00', nowMs / 1000 - 60, String(nowMs / 1000 - 60)]
    for (const at of times) expect(told(plain({ gauge: 't1', value: 1, at }))).toEqual([['t1', -60, 1, null]])
    for (const at of ['2026-03-10T07:59:00', 'yesterday', true, {}, -1, 1e300])
      expect(plain({ gauge: 't1', value: 1, at }).refused).toMatchObject([{ index: 0, reason: 'no_time' }])
  })
  test('what is no reading is named by its place, and the others are read', () => {
    const post = plain([
      { gauge: 't1', value: 'warm' },
      { gauge: 't1', value: 25 },
      { value: 25 },
      null,
      { gauge: 't1', value: null },
      { gauge: 't1', value: 25, at: '2026-03-10T08:06:00Z' },
      { gauge: 't1', value: 25, at: '2025-03-10T08:00:00Z' },
      { gauge: 't1', value: 25, unit: 7 },
    ])
    expect(told(post)).toEqual([['t1', 0, 25, null]])
    expect(post.refused.map(({ index, reason }) => [index, reason])).toEqual([
      [0, 'not_a_number'],
      [2, 'no_gauge'],
      [3, 'no_gauge'],
      [4, 'not_a_number'],
      [5, 'in_the_future'],
      [6, 'too_old'],
      [7, 'wrong_unit'],
    ])
  })
  test('what is none at all is refused whole', () => {
    for (const body of ['', 'NaN', '{', 'null', '7', '{"readings": 7}', `[${'0,'.repeat(20_000)}0]`])
      expect(() => read('application/json', body), body.slice(0, 20)).toThrow(UnreadablePost)
  })
})

/** Jennings, C. et al. (2018): Sensor Measurement Lists (SenML), RFC 8428, section 5.1. */
describe('SenML, by the examples of RFC 8428', () => {
  test('5.1.1: a single value', () => {
    expect(told(senml([{ n: 'urn:dev:ow:10e2073a01080063', u: 'Cel', v: 23.1 }]))).toEqual([
      ['urn:dev:ow:10e2073a01080063', 0, 23.1, 'Cel'],
    ])
  })
  test('5.1.2: several at one moment, under one base name', () => {
    const pack = [
      { bn: 'urn:dev:ow:10e2073a01080063:', n: 'voltage', u: 'V', v: 120.1 },
      { n: 'current', u: 'A', v: 1.2 },
    ]
    expect(told(senml(pack))).toEqual([
      ['urn:dev:ow:10e2073a01080063:voltage', 0, 120.1, 'V'],
      ['urn:dev:ow:10e2073a01080063:current', 0, 1.2, 'A'],
    ])
  })
  test('5.1.2: times beside a base time, a base unit for those without one', () => {
    const bt = nowMs / 1000 - 10
    const pack = [
      { bn: 'urn:dev:ow:10e2073a01080063:', bt, bu: 'A', bver: 5, n: 'voltage', u: 'V', v: 120.1 },
      { n: 'current', t: -5, v: 1.2 },
      { n: 'current', t: -4, v: 1.3 },
      { n: 'current', v: 1.7 },
    ]
    expect(told(senml(pack)).map(([, ...rest]) => rest)).toEqual([
      [-10, 120.1, 'V'],
      [-15, 1.2, 'A'],
      [-14, 1.3, 'A'],
      [-10, 1.7, 'A'],
    ])
  })
  test('4.5.3: a time below 2^28 is beside now; 4.6: base values are added', () => {
    const pack = [{ bn: 't', bv: 20, bu: 'Cel', t: -60, v: 5 }, { v: 6 }]
    expect(told(senml(pack))).toEqual([
      ['t', -60, 25, 'Cel'],
      ['t', 0, 26, 'Cel'],
    ])
  })
  test('values that are no numbers are refused one by one; a record may hold base fields alone', () => {
    const post = senml([
      { bn: 'x:' },
      { n: 'open', vb: true },
      { n: 'name', vs: 'a' },
      { n: 't', v: 1 },
      { n: 's', s: 4 },
    ])
    expect(told(post)).toEqual([['x:t', 0, 1, null]])
    expect(post.refused.map(({ index, reason }) => [index, reason])).toEqual([
      [1, 'not_a_number'],
      [2, 'not_a_number'],
      [4, 'not_a_number'],
    ])
  })
  test('4.4: a later version, and a field that must be understood and is not, refuse the pack', () => {
    for (const pack of [[{ bver: 11, n: 't', v: 1 }], [{ n: 't', v: 1, secret_: 1 }], {}, [7], [{ n: 5, v: 1 }]])
      expect(() => senml(pack)).toThrow(UnreadablePost)
  })
})

describe('CSV', () => {
  test('is gauge, time, value and unit; names above are passed over; commas or semicolons', () => {
    const lines = ['gauge,at,value,unit', 't1,2026-03-10T07:59:00Z,25.4', 't1,,77.9,F', '']
    expect(told(read('text/csv', lines.join('\r\n')))).toEqual([
      ['t1', -60, 25.4, null],
      ['t1', 0, 77.9, 'F'],
    ])
    expect(told(read('text/csv', 't1;;25.4'))).toEqual([['t1', 0, 25.4, null]])
  })
  test('a value that is none is refused by its line', () => {
    for (const value of ['', '25,4x', '0x1f', 'NaN', 'Infinity', '1e999'])
      expect(read('text/csv', `t1,,"${value}"`).refused, value).toMatchObject([{ index: 0, reason: 'not_a_number' }])
  })
  test('an open quote refuses it whole', () => {
    expect(() => read('text/csv', 't1,,"25.4')).toThrow(UnreadablePost)
  })
})
