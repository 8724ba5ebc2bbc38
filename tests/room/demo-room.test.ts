import { execFile } from 'node:child_process'
import { join } from 'node:path'
import { promisify } from 'node:util'
import {
  getSeries,
  listClutches,
  listCultures,
  listDevices,
  listJuvenileGroups,
  listLarvalBatches,
  listPairs,
} from '@fryward/room'
import { type Database, openDatabase } from '@fryward/store'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { createTestDatabase, type TestDatabase } from '../support/database.ts'

// A Wednesday at ten: the morning's round is half done.
const now = '2026-03-11T10:00:00.000Z'
const seed = join(import.meta.dirname, '../../prisma/demo/seed.mjs')

let testDatabase: TestDatabase
let database: Database
let roomId: string
let ctx: Parameters<typeof listPairs>[0]['ctx']

beforeAll(async () => {
  testDatabase = await createTestDatabase()
  const { connectionString } = testDatabase
  const environment = { ...process.env, DATABASE_URL: connectionString, DEMO_NOW: now, DEMO_TIME_ZONE: 'Europe/Lisbon' }
  const { stdout } = await promisify(execFile)(process.execPath, ['--disable-warning=DeprecationWarning', seed], {
    env: environment,
  })
  roomId = JSON.parse(stdout.trim().split('\n').at(-1)!).roomId
  database = openDatabase({ connectionString, maxConnections: 2 })
  const owner = await database.prisma.membership.findFirstOrThrow({ where: { roomId, role: 'owner' } })
  ctx = { database, now, actor: { kind: 'person', userId: owner.userId, name: 'The owner' } }
})
afterAll(async () => {
  await database.close()
  await testDatabase.drop()
})

test('the demo room holds what a visitor is promised', async () => {
  expect(await listPairs({ ctx, roomId })).toHaveLength(3)
  const cultures = (await listCultures({ ctx, roomId })).filter((culture) => culture.endedAt === null)
  expect(cultures.filter((culture) => culture.kind === 'rotifer').length).toBe(3)
  expect(cultures.filter((culture) => culture.isBackup)).toHaveLength(1)
  expect((await listLarvalBatches({ ctx, roomId })).filter((batch) => batch.endedAt === null)).toHaveLength(2)
  expect((await listJuvenileGroups({ ctx, roomId })).filter((group) => group.endedAt === null)).toHaveLength(1)
})

test('one clutch of the demo room is two nights from hatching', async () => {
  const clutches = (await listClutches({ ctx, roomId })).filter((clutch) => clutch.state === 'incubating')
  const soonest = clutches
    .flatMap((clutch) => clutch.nights.toSorted((a, b) => b.probability - a.probability).slice(0, 1))
    .map((night) => night.date)
  expect(soonest.some((date) => date >= '2026-03-12' && date <= '2026-03-14')).toBe(true)
})

test('no clutch of the demo room still waits for a hatch that is over, whoever forgot to ask that morning', async () => {
  const clutches = (await listClutches({ ctx, roomId })).filter((clutch) => clutch.state === 'incubating')
  expect(clutches.filter(({ ageDays }) => ageDays > 10).map(({ name }) => name)).toEqual([])
})

test('its nauplii are counted as they are harvested, and fed in mL of their jar', async () => {
  const cone = (await listCultures({ ctx, roomId })).find(({ kind }) => kind === 'artemia_hatch')!
  const of = (kind: 'harvest' | 'count', subjectId: string) =>
    database.prisma.fact.count({ where: { roomId, kind, subjectId, struckAt: null } })
  const harvests = await of('harvest', cone.id)
  expect(harvests).toBeGreaterThan(5)
  expect(await of('count', cone.id)).toBeGreaterThan(0.8 * harvests)
  const feeds = await database.prisma.fact.findMany({ where: { roomId, kind: 'feeding', struckAt: null } })
  const ofNauplii = feeds.filter(({ data }) => (data as { food?: string }).food === 'artemia')
  const inMl = ofNauplii.filter(({ data }) => (data as { amountMl?: number }).amountMl !== undefined)
  // A feed that was walked in one go with its harvest goes by their number.
  expect(inMl.length).toBeGreaterThan(0.5 * ofNauplii.length)
})

test('its caretakers were late, skipped, forgot and corrected themselves', async () => {
  const states = await database.prisma.task.groupBy({ by: ['state'], where: { roomId }, _count: true })
  const numberOf = Object.fromEntries(states.map(({ state, _count }) => [state, _count]))
  expect(numberOf.done).toBeGreaterThan(500)
  expect(numberOf.skipped).toBeGreaterThan(0)
  expect(numberOf.missed).toBeGreaterThan(0)
  expect(await database.prisma.fact.count({ where: { roomId, struckAt: { not: null } } })).toBeGreaterThan(0)
  expect(await database.prisma.subject.count({ where: { roomId, kind: 'culture', endedAt: { not: null } } })).toBe(1)
})

test('nothing in the demo room lies in the future', async () => {
  expect(await database.prisma.fact.count({ where: { roomId, at: { gt: now } } })).toBe(0)
  expect(await database.prisma.signOff.count({ where: { roomId, receivedAt: { gt: now } } })).toBe(0)
})

test('today is under way: some done, some open', async () => {
  const today = await database.prisma.task.groupBy({
    by: ['state'],
    where: { roomId, onDate: new Date('2026-03-11T00:00:00.000Z') },
    _count: true,
  })
  const states = today.map(({ state }) => state)
  expect(states).toContain('open')
  expect(states).toContain('done')
})

test('its probes are simulated and named so, and their month of readings is there to look at', async () => {
  const [device, ...more] = await listDevices({ ctx, roomId })
  expect(more).toEqual([])
  expect(device?.name).toContain('simulated')
  expect(device?.gauges.map(({ subject }) => subject.name)).toEqual(['L1', 'N1', 'L1'])
  const month = { from: '2026-02-10T10:00:00.000Z', to: now, points: 400 }
  for (const { id, low, high } of device?.gauges ?? []) {
    const { points } = await getSeries({ ctx, roomId, gaugeId: id, query: month })
    expect(points.length).toBeGreaterThan(300)
    // Within its limits on most days: a visitor's first list is not all alarms.
    const out = points.filter((point) => point.high > (high ?? Infinity) || point.low < (low ?? -Infinity))
    expect(out.length).toBeLessThan(20)
  }
})
