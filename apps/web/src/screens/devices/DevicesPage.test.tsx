import type { Alarm, Broker, Device, Gauge } from '@fryward/shared'
import { screen, waitFor, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { answerApi } from '@/testing/answer-api.ts'
import { makeRoom } from '@/testing/made-up.ts'
import { renderInRoom } from '@/testing/render-in-room.tsx'
import { DevicesPage } from './DevicesPage.tsx'

const at = '2026-11-29T07:00:00.000Z'
const room = makeRoom()
const tank = { id: '019abc00-0000-7000-8000-000000000001', kind: 'tank' as const, name: 'L1' }
const gauge: Gauge = {
  ...{ id: '019abc00-0000-7000-8000-000000000002', deviceId: '019abc00-0000-7000-8000-000000000003', key: 't1' },
  ...{ quantity: 'temperature', unit: 'degC', subject: tank, offset: 0, low: 24, high: 28, forMinutes: 10 },
  ...{
    silentAfterMinutes: 30,
    maxPerHour: null,
    stuckAfterHours: 24,
    latest: { at, value: 29.4 },
    saturation: null,
    endedAt: null,
    version: 1,
  },
}
const device = (part: Partial<Device> = {}): Device => ({
  ...{
    id: gauge.deviceId,
    name: 'Rack',
    topic: null,
    createdAt: at,
    lastSeenAt: at,
    revokedAt: null,
    gauges: [gauge],
    version: 1,
  },
  ...part,
})
const alarm = (part: Partial<Alarm> = {}): Alarm => ({
  ...{ id: '019abc00-0000-7000-8000-000000000004', gauge, subject: tank, kind: 'too_high', raisedAt: at, value: 29.4 },
  ...{ acknowledgedAt: null, acknowledgedByName: null, quietUntil: null, handedToName: null, clearedAt: null, ...part },
})
const nothing = () => []
const answers = {
  getBroker: () => broker(),
  listDevices: () => [device()],
  listAlarms: nothing,
  listMarks: nothing,
  getSeries: () => ({ gaugeId: gauge.id, from: at, to: '2026-11-30T07:00:00.000Z', stepS: 300, points: [] }),
  ...{ listTanks: nothing, listCultures: nothing, listPairs: nothing, listClutches: nothing },
  ...{ listLarvalBatches: nothing, listJuvenileGroups: nothing },
}

test('a new device’s token is shown once, in the command that tries it', async () => {
  const made = device({ name: 'Shelf 2', gauges: [], lastSeenAt: null })
  const { writes } = answerApi({
    ...answers,
    listDevices: () => (writes.length > 0 ? [made] : []),
    createDevice: () => ({ device: made, token: 'a-token-that-is-long-enough' }),
  })
  const { user } = renderInRoom(<DevicesPage />, { room })
  expect(await screen.findByText(/No device posts here yet/)).toBeTruthy()
  await user.type(screen.getByLabelText(/What you call it/), 'Shelf 2')
  await user.click(screen.getByRole('button', { name: 'Make its token' }))
  expect((await screen.findByText(/Bearer a-token-that-is-long-enough/)).textContent).toMatch(/^curl/)
  for (const [from, has] of [
    ['A microcontroller', /"Bearer a-token-that-is-long-enough"[\s\S]*"t1,,"/],
    ['A single-board computer', /"gauge": "t1"[\s\S]*Bearer a-token-that-is-long-enough/],
  ] as const) {
    await user.click(screen.getAllByRole('radio', { name: from })[0]!)
    expect(screen.getByText(/Bearer a-token-that-is-long-enough/).textContent).toMatch(has)
  }
  expect(await screen.findByText('Nothing has come from it yet.')).toBeTruthy()
  expect(writes).toEqual([{ route: 'createDevice', body: { name: 'Shelf 2' } }])
})

test('a gauge’s limits are typed in the units of the room, and an empty box is no limit', async () => {
  const { writes } = answerApi({ ...answers, changeGauge: () => gauge })
  const { user } = renderInRoom(<DevicesPage />, { room: makeRoom({ units: 'us' }) })
  await user.click(await screen.findByRole('button', { name: 'Limits of t1' }))
  const low = screen.getByLabelText<HTMLInputElement>('At least')
  expect(low.value).toBe('75.2')
  await user.clear(low)
  await user.clear(screen.getByLabelText('At most'))
  await user.type(screen.getByLabelText('At most'), '77')
  await user.click(screen.getByRole('button', { name: 'Save the limits' }))
  const body = {
    low: null,
    high: 25,
    forMinutes: 10,
    silentAfterMinutes: 30,
    maxPerHour: null,
    stuckAfterHours: 24,
    version: 1,
  }
  await waitFor(() => expect(writes).toEqual([{ route: 'changeGauge', body }]))
})

test('devices are a line each; what is in trouble, linked to or never heard is open, and one is found by what it reads', async () => {
  const shelf = (index: number, part: Partial<Device> = {}): Device => {
    const id = (of: string) => `019abc00-0000-7000-8000-0000000${of}0${index}`
    const reads = { ...gauge, id: id('000'), key: `t${index}`, subject: { ...tank, name: `G${index}` } }
    return device({ id: id('001'), name: `Shelf ${index}`, gauges: [reads], ...part })
  }
  const shelves = [1, 2, 3, 4, 5, 6, 7, 8].map((index) => shelf(index, index === 8 ? { lastSeenAt: null } : {}))
  window.location.hash = shelves[2]!.gauges[0]!.id
  answerApi({
    ...answers,
    listDevices: () => shelves,
    listAlarms: () => [alarm({ gauge: shelves[4]!.gauges[0]! })],
  })
  const { user } = renderInRoom(<DevicesPage />, { room })
  const opened = () =>
    screen.getAllByText('How it posts here').map((one) => one.closest('details')?.parentElement?.closest('details')?.id)
  const [linked, troubled, unheard] = [shelves[2]!.id, shelves[4]!.id, shelves[7]!.id]
  await waitFor(() => expect(opened()).toEqual([linked, troubled, unheard]))

  await user.click(screen.getByRole('heading', { name: 'Shelf 5' }))
  await waitFor(() => expect(opened()).toEqual([linked, unheard]))
  await user.click(screen.getByRole('heading', { name: 'Shelf 1' }))
  await waitFor(() => expect(opened()).toEqual([shelves[0]!.id, linked, unheard]))

  await user.type(screen.getByLabelText('Find a device'), 'temp g5')
  expect(await screen.findByText('1 of 8 devices')).toBeTruthy()
  expect(screen.queryByRole('heading', { name: 'Shelf 1' })).toBeNull()
  expect(screen.getByRole('heading', { name: 'Shelf 5' })).toBeTruthy()
  window.location.hash = ''
})

test('oxygen is told with its share of what the water holds, in the line, on the card and under the chart', async () => {
  // Standard Methods, Table 4500-O:I: 6.615 mg/L at 26 C and chlorinity 20.
  const saturation = {
    mgPerL: 6.615,
    temperatureC: 26,
    salinity: 36.131,
    isRead: { temperature: true, salinity: false },
  }
  const oxygen: Gauge = {
    ...{ ...gauge, quantity: 'oxygen', unit: 'mg_per_L', key: 'o2', low: 4, high: null, saturation },
    latest: { at, value: 5.2 },
  }
  const point = { at, low: 5.2, high: 6.4, mean: 5.8, number: 5 }
  answerApi({
    ...answers,
    listDevices: () => [device({ gauges: [oxygen] })],
    getSeries: () => ({ gaugeId: gauge.id, from: at, to: '2026-11-30T07:00:00.000Z', stepS: 300, points: [point] }),
  })
  renderInRoom(<DevicesPage />, { room })
  expect((await screen.findAllByText(/^5.2 mg\/L, 79% of saturation/)).length).toBe(2)
  expect(screen.getByText(/water of 26 °C and salinity 36.1 holds 6.6 mg\/L .* The salinity is as set/)).toBeTruthy()
  const said = /^Oxygen in L1 between 5.2 mg\/L, 79% of saturation and 6.4 mg\/L, 97% of saturation.$/
  expect(await screen.findByLabelText(said)).toBeTruthy()
  expect(screen.getByText('5.8 mg/L, 88% of saturation')).toBeTruthy()
})

test('an alarm says what to do first, and somebody has it with one tap', async () => {
  const { writes } = answerApi({
    ...answers,
    listAlarms: () => [alarm(writes.length > 0 ? { acknowledgedAt: at, acknowledgedByName: 'Ana' } : {})],
    acknowledgeAlarm: () => alarm(),
  })
  const { user } = renderInRoom(<DevicesPage />, { room })
  const card = (await screen.findByText(/^Temperature in L1 is too high: 29.4/)).closest<HTMLElement>('[role=alert]')!
  expect(within(card).getByText(/unplug the heater/)).toBeTruthy()
  await user.click(within(card).getByRole('button', { name: /^I have it: Temperature in L1/ }))
  expect(await within(card).findByText('Ana has it.')).toBeTruthy()
  expect(writes.map(({ route }) => route)).toEqual(['acknowledgeAlarm'])
})

test('a gauge goes out of use only when that is meant', async () => {
  const { writes } = answerApi({ ...answers, endGauge: () => gauge })
  const { user } = renderInRoom(<DevicesPage />, { room })
  await user.click(await screen.findByRole('button', { name: 'Take out of use: t1' }))
  await user.click(screen.getByRole('button', { name: 'Keep it' }))
  await user.click(screen.getByRole('button', { name: 'Take out of use: t1' }))
  expect(writes).toEqual([])
  await user.click(screen.getByRole('button', { name: 'Take it out of use' }))
  await waitFor(() => expect(writes).toEqual([{ route: 'endGauge', body: {} }]))
})

test('readings of a file are looked at line by line before they are kept', async () => {
  const line = { line: 2, text: '2026-11-01,07:30,25.4', thing: 't1', date: '2026-11-01', problem: null }
  const bad = { ...line, line: 3, text: '2026-11-01,07:31,warm', problem: '"warm" is no number.' }
  const { writes } = answerApi({
    ...answers,
    previewReadings: () => ({ lines: [line, bad], good: 1, note: 'Tasks go by them.' }),
    importReadings: () => ({ id: gauge.id, kept: 1, lines: [line, bad], note: 'Tasks go by them.' }),
    undoReadings: () => ({ struck: 1 }),
  })
  const { user } = renderInRoom(<DevicesPage />, { room })
  await user.click(await screen.findByRole('button', { name: 'Bring readings in: t1' }))
  const file = new File(['date,time,value\n'], 'logger.csv', { type: 'text/csv' })
  await user.upload(screen.getByLabelText('Choose a file'), file)
  expect(await screen.findByText('left out: "warm" is no number.')).toBeTruthy()
  expect(screen.getByText('Tasks go by them.')).toBeTruthy()
  expect(writes.map(({ route }) => route)).toEqual(['previewReadings'])
  await user.click(screen.getByRole('button', { name: 'Keep 1 reading' }))
  await user.click(await screen.findByRole('button', { name: 'Take them all back' }))
  expect(await screen.findByText('Taken back: 1 struck out.')).toBeTruthy()
})

const broker = (part: Partial<Broker> = {}): Broker => ({
  ...{ url: null, username: null, hasPassword: false, authority: null, isConnected: false, lastConnectedAt: null },
  ...{ trouble: null, troubleAt: null, refusals: [], ...part },
})

test('a device with a topic is told how to publish there, and the topic is another from the next tap on', async () => {
  const { writes } = answerApi({
    ...answers,
    getBroker: () => broker({ url: 'mqtts://broker.lan', username: 'room', isConnected: true }),
    listDevices: () => [device({ topic: 'home/rack' })],
    changeDevice: () => device({ topic: 'shelf' }),
  })
  const { user } = renderInRoom(<DevicesPage />, { room })
  await user.click(await screen.findByText('How it posts here'))
  expect((await screen.findByText(/^mosquitto_pub/)).textContent).toMatch(
    /-h broker.lan -p 8883[\s\S]*-t 'home\/rack\/t1'/,
  )
  const box = screen.getByLabelText('Topic of Rack at the broker')
  await user.clear(box)
  await user.type(box, 'shelf')
  await user.click(screen.getByRole('button', { name: 'Save the topic' }))
  await waitFor(() => expect(writes).toEqual([{ route: 'changeDevice', body: { topic: 'shelf', version: 1 } }]))
})

test('a broker is named with a password that no page shows again, and its trouble is said', async () => {
  const named = broker({ url: 'mqtt://broker.lan', username: 'room', hasPassword: true, trouble: 'It refuses.' })
  const refusal = { topic: 'home/rack/t1', reason: 'unreadable', detail: '"nan" is no number.', number: 3, lastAt: at }
  const { writes } = answerApi({
    ...answers,
    getBroker: () => (writes.length > 0 ? { ...named, refusals: [refusal] } : broker()),
    changeBroker: () => named,
  })
  const { user } = renderInRoom(<DevicesPage />, { room })
  await user.click(await screen.findByRole('button', { name: 'Name a broker' }))
  await user.type(screen.getByLabelText('Address'), 'mqtt://broker.lan')
  await user.type(screen.getByLabelText('User name'), 'room')
  await user.type(screen.getByLabelText('Password'), 'sea-salt')
  await user.click(screen.getByRole('button', { name: 'Save the broker' }))
  expect(await screen.findByText('Not connected to mqtt://broker.lan')).toBeTruthy()
  expect(screen.getByText('It refuses.')).toBeTruthy()
  expect(screen.getByText(/3 times, last/)).toBeTruthy()
  await user.click(screen.getByRole('button', { name: 'Change the broker' }))
  expect(screen.getByLabelText<HTMLInputElement>('Password').value).toBe('')
  await user.click(screen.getByRole('button', { name: 'Save the broker' }))
  const kept = { url: 'mqtt://broker.lan', username: 'room', authority: null }
  await waitFor(() => expect(writes.map(({ body }) => body)).toEqual([{ ...kept, password: 'sea-salt' }, kept]))
})
