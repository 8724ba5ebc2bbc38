import { expect, test } from 'vitest'
import { SnapshotBuilder } from '../testing/snapshot-builder.ts'
import { readBeside, readBy, temperaturesOf, waterReads } from './water-reads.ts'

const at = (time: string, day = 10) => `2026-03-${String(day).padStart(2, '0')}T${time}:00.000Z`

/** A tank tested by hand at eight and at six, and read by a gauge at noon, the day before and the day after. */
function watered() {
  const room = new SnapshotBuilder()
  const tank = room.tank()
  const gauge = { gaugeId: room.nextId(), gaugeKey: 'probe-1', readings: 60 }
  const reading = (when: string, data: object) =>
    room.fact('water_reading', tank.id, when, { ...gauge, from: when, ...data } as never)
  room.fact('water_test', tank.id, at('08:00'), { temperatureC: 26, salinity: 33 })
  room.fact('water_test', tank.id, at('18:00'), { pH: 8.1 })
  reading(at('12:00'), { temperatureC: 27 })
  reading(at('12:00', 9), { temperatureC: 25 })
  reading(at('12:00', 11), { temperatureC: 28 })
  return { room, tank, reading, snapshot: () => room.build() }
}

test('what a hand and a gauge measured is one row, oldest first, up to a moment', () => {
  const { tank, snapshot } = watered()
  const reads = (measure: Parameters<typeof waterReads>[1], until: string) =>
    waterReads(snapshot(), measure, { subjectId: tank.id, until }).map((read) => [read.value, readBy(read)])
  expect(reads('temperatureC', at('12:01'))).toEqual([
    [25, 'by gauge probe-1'],
    [26, 'by hand'],
    [27, 'by gauge probe-1'],
  ])
  expect(reads('temperatureC', at('12:00'))).toHaveLength(2)
  expect(reads('pH', at('23:00'))).toEqual([[8.1, 'by hand']])
  expect(reads('oxygenMgPerL', at('23:00'))).toEqual([])
})

test('beside a test that left it out stands what a gauge read nearest, within half a day', () => {
  const { tank, snapshot, room } = watered()
  const beside = (when: string) =>
    readBeside(snapshot(), 'temperatureC', { subjectId: tank.id, at: when })?.value ?? null
  expect([beside(at('18:00')), beside(at('10:00', 11)), beside(at('13:00', 9))]).toEqual([27, 28, 25])
  // Noon of one day and of the next are a day apart: at midnight both are as near, and at the edge it still speaks.
  expect(beside(at('23:59'))).toBe(27)
  expect(beside(at('00:01', 11))).toBe(28)
  expect([beside(at('00:00', 12)), beside(at('00:01', 12)), beside(at('00:00', 9)), beside(at('23:59', 8))]).toEqual([
    ...[28, null, 25, null],
  ])
  expect(readBeside(snapshot(), 'pH', { subjectId: tank.id, at: at('12:00') })).toBeNull()
  expect(readBeside(snapshot(), 'temperatureC', { subjectId: room.nextId(), at: at('12:00') })).toBeNull()
})

test('a forecast takes what water with eggs may have, each mean of a gauge from where it begins', () => {
  const { tank, snapshot, room, reading } = watered()
  for (const temperatureC of [9.9, 10, 40]) room.fact('water_test', tank.id, at('20:00'), { temperatureC })
  reading(at('22:00'), { from: at('16:00'), temperatureC: 26.5 })
  const taken = temperaturesOf(snapshot(), tank.id).map(({ at: from, temperatureC }) => [from, temperatureC])
  expect(taken).toContainEqual([at('16:00'), 26.5])
  expect(taken.map(([, temperatureC]) => temperatureC).sort()).toEqual([10, 25, 26, 26.5, 27, 28, 40])
})
