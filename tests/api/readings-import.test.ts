import { makeRoomForReadings } from '@fryward/room'
import type { Gauge } from '@fryward/shared'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'

let world: World
let full: FullRoom
let gauge: Gauge
const params = () => ({ roomId: full.roomId, gaugeId: gauge.id })

beforeAll(async () => {
  // A week after Lisbon's clocks went forward: 07:30 there is 06:30 in UTC.
  world = await openWorld({ at: '2026-04-05T08:00:00.000Z' })
  full = await openFullRoom(world)
  await makeRoomForReadings(world.contextOf(full.owner))
  const inRoom = { roomId: full.roomId }
  const { device } = await world.ok(full.owner, 'createDevice', { params: inRoom, body: { name: 'Logger' } })
  gauge = await world.ok(full.owner, 'createGauge', {
    params: { ...inRoom, deviceId: device.id },
    body: { key: 't1', quantity: 'temperature', subjectId: full.larvalTank.id, offset: -0.4 },
  })
})
afterAll(() => world.close())

const preview = (text: string) => world.ok(full.caretaker, 'previewReadings', { params: params(), body: { text } })
const keep = (text: string) => world.call(full.caretaker, 'importReadings', { params: params(), body: { text } })
const series = async (from: string, to: string) =>
  (await world.ok(full.viewer, 'getSeries', { params: params(), query: { from, to } })).points.map(
    ({ at, mean, number }) => [at, mean, number],
  )
const april = () => series('2026-04-01T00:00:00Z', '2026-04-02T00:00:00Z')

test('each line is told before anything is kept, the good ones are kept as they stand, and are taken back as one', async () => {
  const file = [
    'Date;Time;Value;Unit',
    '1.4.2026;07:30;25,4;',
    '1.4.2026;7:31:30;78,8;F',
    '1.4.2026;07:30;25,5;',
    '1.4.2026;25:00;25,4;',
    'yesterday;07:30;25,4;',
    '1.4.2026;07:32;warm;',
    '1.4.2026;07:33;85;',
    '1.4.2026;07:34;25;pH',
    '2027-04-05;10:00;25;',
  ].join('\n')
  const seen = await preview(file)
  expect(seen.good).toBe(2)
  expect(seen.lines.map(({ line, problem }) => [line, problem])).toEqual([
    [2, null],
    [3, null],
    [4, 'A reading of this moment is there already, here or further up in the file.'],
    [5, '"25:00" is no time of day. Write it as 07:30 or 07:30:15.'],
    [6, '"yesterday" is no date. Write it as 2026-03-10.'],
    [7, '"warm" is no number. Write digits, such as 25.4.'],
    [8, 'No temperature is outside -5 to 60. Look at the unit and the decimal mark.'],
    [9, '"pH" is no unit of temperature. Write one of: Cel, C, degC, K, F.'],
    [10, 'This time has not come yet.'],
  ])
  expect(await april()).toEqual([])
  const { body: made } = await keep(file)
  expect(made.kept).toBe(2)
  const day = await series('2026-03-30T00:00:00Z', '2026-04-04T00:00:00Z')
  expect(day.map(([at, mean, number]) => [at, Number(mean).toFixed(2), number])).toEqual([
    ['2026-04-01T06:00:00.000Z', '25.70', 2],
  ])
  expect((await preview(file)).good).toBe(0)
  const undo = { params: { ...params(), importId: made.id }, body: {} }
  expect(await world.ok(full.caretaker, 'undoReadings', undo)).toEqual({ struck: 2 })
  expect(await series('2026-03-30T00:00:00Z', '2026-04-04T00:00:00Z')).toEqual([])
  expect((await world.call(full.caretaker, 'undoReadings', undo)).problem?.code).toBe('wrong_state')
})

test('a moment may stand in one column, with its zone or by the room’s clock, as old as a notebook is', async () => {
  const file =
    'timestamp,temperature\n2024-02-01 07:30,25.1\n2024-02-01T08:30:00+01:00,25.2\n2024-02-01T07:45:00Z,25.3\n'
  const { body } = await keep(file)
  expect(body.lines.map(({ problem }) => problem === null)).toEqual([true, false, true])
  expect(await series('2024-02-01T07:00:00Z', '2024-02-01T08:00:00Z')).toEqual([
    ['2024-02-01T07:30:00.000Z', 25.1, 1],
    ['2024-02-01T07:45:00.000Z', 25.3, 1],
  ])
})

test('a file that is none is refused in a sentence', async () => {
  const said = async (text: string) => (await keep(text)).problem?.fields?.[0]?.message
  expect(await said('date,time\n2026-04-01,07:30\n')).toMatch(/^The first line names the columns. It lacks: value/)
  expect(await said('at,value\nnever,25\n')).toMatch(/^No line of this file can be kept/)
})

test('the latest of a file is read by rules as what a device posts is, until it is taken back; what is old is told as that', async () => {
  const told = await preview('at,value\n2026-03-20T07:30:00Z,25.4\n')
  expect(told.note).toMatch(/Tasks go by none of them: the newest is more than three days old/)
  const file = `at,value\n${[0, 10, 20, 30].map((minute) => `2026-04-05T06:${String(minute).padStart(2, '0')}:00Z,${29 + (minute % 20) / 100}`).join('\n')}`
  const noted = async () => {
    const query = { kind: 'water_reading' } as const
    const { facts } = await world.ok(full.viewer, 'listFacts', { params: { roomId: full.roomId }, query })
    return facts.filter(({ struckAt }) => struckAt === null)
  }
  expect((await preview(file)).note).toMatch(/tasks and forecasts go by the latest of them/)
  expect(await noted()).toEqual([])
  for (const _again of [1, 2]) {
    const { body: made } = await keep(file)
    expect(made.note).toMatch(/tasks and forecasts go by the latest of them/)
    expect(await noted()).toMatchObject([
      { subjectId: full.larvalTank.id, at: '2026-04-05T07:00:00.000Z', data: { temperatureC: 29.05, gaugeKey: 't1' } },
    ])
    const undo = { params: { ...params(), importId: made.id }, body: {} }
    expect(await world.ok(full.caretaker, 'undoReadings', undo)).toEqual({ struck: 4 })
    expect(await noted()).toEqual([])
  }
})
