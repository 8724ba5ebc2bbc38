import { expect, test } from 'vitest'
import { saidTitle } from '../../testing/said-title.ts'
import { onlyDraft, SnapshotBuilder, signOff } from '../../testing/snapshot-builder.ts'
import { whyLines } from '../../testing/why-lines.ts'
import { tankOxygenLow } from './tank-oxygen.ts'

const date = '2026-03-10'
const gauge = (key: string) => ({ gaugeId: '019abc00-0000-7000-8000-000000000001', gaugeKey: key, readings: 3600 })

// Chlorinity 20 is a salinity of 36.131: at 26 C it holds 6.615 mg/L, at 20 C 7.346, at 30 C 6.197. Standard Methods, Table 4500-O:I.
function pairsTank() {
  const room = new SnapshotBuilder()
  const tank = room.tank({ name: 'Pair tank', kind: 'broodstock', salinity: 36.131, temperatureC: 26 })
  room.pair({ tankId: tank.id })
  const reads = (at: string, values: object) =>
    room.fact('water_reading', tank.id, at, { ...gauge('o2'), from: at, ...values })
  const drafts = () => room.drafts(date, [tankOxygenLow]).drafts
  return { room, tank, reads, drafts }
}

test('oxygen is low by its share of what the water holds: 5.2 mg/L of 6.6, until it reads 5.4', () => {
  const { reads, drafts } = pairsTank()
  reads('2026-03-10T06:00:00.000Z', { oxygenMgPerL: 5.2 })
  const [draft] = drafts()
  expect(saidTitle(draft!)).toBe('See to it: oxygen is low')
  expect(draft!.content.fields.map(({ name }) => name)).toEqual(['oxygenMgPerL'])
  expect(draft!.content.because.map(({ label, quantity }) => [label, quantity?.value])).toEqual([
    ['oxygen read by gauge o2', 5.2],
    ['temperature, set and not read lately', 26],
    ['salinity, set and not read lately', 36.131],
    // 5.2 / 6.615
    ['of saturation', 0.79],
    ['of saturation at the least', 0.8],
  ])
  expect(draft!.content.because[0]!.origin).toMatchObject({ kind: 'fact', at: '2026-03-10T06:00:00.000Z' })
  reads('2026-03-10T09:00:00.000Z', { oxygenMgPerL: 5.4 })
  expect(drafts()).toEqual([])
})

test('the same oxygen is too little in cold water and enough in warm, by what gauge and hand read about then', () => {
  const { room, tank, reads, drafts } = pairsTank()
  reads('2026-03-10T05:00:00.000Z', { ...gauge('t1'), temperatureC: 30 })
  reads('2026-03-10T06:00:00.000Z', { oxygenMgPerL: 5.2 })
  // 5.2 / 6.197 is 0.84.
  expect(drafts()).toEqual([])
  room.fact('water_test', tank.id, '2026-03-10T05:50:00.000Z', { temperatureC: 20 })
  const [draft] = drafts()
  expect(draft!.content.because.slice(1, 4).map(({ label, quantity }) => [label, quantity?.value])).toEqual([
    ['temperature read by hand', 20],
    ['salinity, set and not read lately', 36.131],
    // 5.2 / 7.346
    ['of saturation', 0.71],
  ])
})

test('a look that measures again settles it; a reading of the day before yesterday asks for nothing, nor does an empty tank', () => {
  const { room, tank, reads, drafts } = pairsTank()
  reads('2026-03-08T06:00:00.000Z', { oxygenMgPerL: 3 })
  expect(drafts()).toEqual([])
  reads('2026-03-09T20:00:00.000Z', { oxygenMgPerL: 3 })
  const draft = onlyDraft(room.drafts(date, [tankOxygenLow]))
  const [again] = signOff(tankOxygenLow, draft, { oxygenMgPerL: 6.1 }).facts
  expect(again).toEqual({ kind: 'water_test', subjectId: tank.id, data: { oxygenMgPerL: 6.1 } })
  room.append(again!, { at: '2026-03-10T07:00:00.000Z' })
  expect(drafts()).toEqual([])
  const empty = room.tank({ kind: 'grow_out', salinity: 36.131, temperatureC: 26 })
  room.fact('water_test', empty.id, '2026-03-10T07:00:00.000Z', { oxygenMgPerL: 2 })
  expect(drafts()).toEqual([])
})

test('it is looked at in the round of the reading, late after an hour, and with the first of the day for yesterday’s', () => {
  const { room, reads, drafts } = pairsTank()
  reads('2026-03-09T20:00:00.000Z', { oxygenMgPerL: 3 })
  expect(drafts()).toMatchObject([{ roundId: 'morning', lateAt: '2026-03-10T08:00:00.000Z' }])
  reads('2026-03-10T13:00:00.000Z', { oxygenMgPerL: 3 })
  expect(drafts()).toMatchObject([{ roundId: 'midday', lateAt: '2026-03-10T13:30:00.000Z' }])
  room.snapshot.room.rounds = room.snapshot.room.rounds.slice(0, 1)
  expect(drafts()).toMatchObject([{ roundId: 'morning' }])
})

test('larvae in a tank of their own are held to it too', () => {
  const room = new SnapshotBuilder()
  const nursery = room.tank({ name: 'Nursery', salinity: 36.131, temperatureC: 26 })
  room.fact('water_test', nursery.id, '2026-03-10T06:30:00.000Z', { oxygenMgPerL: 5.2 })
  expect(room.drafts(date, [tankOxygenLow]).drafts).toEqual([])
  room.batch({ hatchedOn: '2026-03-06', tankId: nursery.id })
  expect(whyLines(onlyDraft(room.drafts(date, [tankOxygenLow])))).toEqual([
    '5.2 mg_per_L oxygen read by hand',
    'and 26 degC temperature, set and not read lately',
    'and 36.131 psu salinity, set and not read lately',
    'equals 0.79 share of saturation',
    'and 0.8 share of saturation at the least',
  ])
})
