import { execFile } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join, relative, resolve } from 'node:path'
import { promisify } from 'node:util'
import { gunzipSync } from 'node:zlib'
import {
  getSeries,
  listClutches,
  listCultures,
  listDevices,
  listJuvenileGroups,
  listLarvalBatches,
  listPairs,
} from '@fryward/room'
import { type Database, findFilledTable, openDatabase, restoreBackup } from '@fryward/store'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { historyKey, keepHistory, livedThroughWith, restoreHistory } from '../../prisma/demo/kept-history.mjs'
import { createTestDatabase, type TestDatabase } from '../support/database.ts'
import { tellRooms } from '../support/room-by-name.ts'

const seed = join(import.meta.dirname, '../../prisma/demo/seed.mjs')
// A Wednesday at ten: the morning's round is half done.
const now = '2026-03-11T10:00:00.000Z'
const built = { DEMO_NOW: now, DEMO_TIME_ZONE: 'Europe/Lisbon' }

let folder: string
let first: TestDatabase
let second: TestDatabase
let told: { first: Told; second: Told }

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fryward-history-'))
  first = await createTestDatabase()
  second = await createTestDatabase()
  told = { first: await fill(first), second: await fill(second) }
})
afterAll(async () => {
  await first.drop()
  await second.drop()
  rmSync(folder, { recursive: true, force: true })
})

/** What the seeding says while it works, and the room it names at its end, with the sign-ins, on the other stream. */
type Told = { said: string; roomId: string }

async function fill({ connectionString }: TestDatabase): Promise<Told> {
  const env = { ...process.env, ...built, DATABASE_URL: connectionString, DEMO_CACHE_DIR: folder }
  const list = ['--disable-warning=DeprecationWarning', seed]
  const { stdout, stderr } = await promisify(execFile)(process.execPath, list, { env })
  return { said: stderr, roomId: JSON.parse(stdout.trim().split('\n').at(-1)!).roomId }
}

async function withDatabase(use: (connectionString: string) => Promise<void>): Promise<void> {
  const database = await createTestDatabase()
  try {
    await use(database.connectionString)
  } finally {
    await database.drop()
  }
}

async function passwordsIn(connectionString: string): Promise<(string | null)[]> {
  const database = openDatabase({ connectionString, maxConnections: 1 })
  try {
    return (await database.prisma.account.findMany()).map((account) => account.password)
  } finally {
    await database.close()
  }
}

const entryOf = (place: string) => readdirSync(place).map((name) => join(place, name))[0]!

describe('the demo room', () => {
  let database: Database
  let roomId: string
  let ctx: Parameters<typeof listPairs>[0]['ctx']

  beforeAll(async () => {
    ;({ roomId } = told.first)
    database = openDatabase({ connectionString: first.connectionString, maxConnections: 2 })
    const owner = await database.prisma.membership.findFirstOrThrow({ where: { roomId, role: 'owner' } })
    ctx = { database, now, actor: { kind: 'person', userId: owner.userId, name: 'The owner' } }
  })
  afterAll(() => database.close())

  test('holds what a visitor is promised', async () => {
    expect(await listPairs({ ctx, roomId })).toHaveLength(3)
    const cultures = (await listCultures({ ctx, roomId })).filter((culture) => culture.endedAt === null)
    expect(cultures.filter((culture) => culture.kind === 'rotifer').length).toBe(3)
    expect(cultures.filter((culture) => culture.isBackup)).toHaveLength(1)
    expect((await listLarvalBatches({ ctx, roomId })).filter((batch) => batch.endedAt === null)).toHaveLength(2)
    expect((await listJuvenileGroups({ ctx, roomId })).filter((group) => group.endedAt === null)).toHaveLength(1)
  })

  test('one clutch of it is two nights from hatching', async () => {
    const clutches = (await listClutches({ ctx, roomId })).filter((clutch) => clutch.state === 'incubating')
    const soonest = clutches
      .flatMap((clutch) => clutch.nights.toSorted((a, b) => b.probability - a.probability).slice(0, 1))
      .map((night) => night.date)
    expect(soonest.some((date) => date >= '2026-03-12' && date <= '2026-03-14')).toBe(true)
  })

  test('no clutch of it still waits for a hatch that is over, whoever forgot to ask that morning', async () => {
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

  test('nothing in it lies in the future', async () => {
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
})

describe('its history', () => {
  test('a room whose history was kept is the room that was lived through', async () => {
    expect(told.first.said).not.toContain('was kept')
    expect(told.second.said).toContain('was kept')
    const [lived, restored] = [await tellRooms(first.connectionString), await tellRooms(second.connectionString)]
    expect(lived.length).toBeGreaterThan(5000)
    expect(restored).toEqual(lived)
  })

  test('a kept history lets nobody in, and each room has passwords of its own', async () => {
    const hashes = [...(await passwordsIn(first.connectionString)), ...(await passwordsIn(second.connectionString))]
    expect(new Set(hashes).size).toBe(8)
    const kept = gunzipSync(readFileSync(join(entryOf(folder), 'history.tar.gz'))).toString('latin1')
    expect(kept).toContain('owner@demo.example')
    for (const hash of hashes) expect(kept).not.toContain(hash)
    await withDatabase(async (connectionString) => {
      await restoreBackup({ connectionString, file: join(entryOf(folder), 'history.tar.gz') })
      expect(await passwordsIn(connectionString)).toEqual(['', '', '', ''])
    })
  })

  test('another date or zone is another history', () => {
    const here = historyKey({ today: '2026-03-11', timeZone: 'Europe/Lisbon' })
    expect(historyKey({ today: '2026-03-11', timeZone: 'Europe/Lisbon' })).toBe(here)
    expect(historyKey({ today: '2026-03-12', timeZone: 'Europe/Lisbon' })).not.toBe(here)
    expect(historyKey({ today: '2026-03-11', timeZone: 'Europe/Madrid' })).not.toBe(here)
  })

  test('a history is named by the parts that the programs are compiled from, and by no other', () => {
    const root = join(import.meta.dirname, '../..')
    const referencesOf = (folder: string): string[] => {
      const { references } = JSON.parse(readFileSync(join(root, folder, 'tsconfig.json'), 'utf8'))
      return (references ?? []).map(({ path }: { path: string }) => relative(root, resolve(root, folder, path)))
    }
    const compiled = new Set(['apps/api', 'apps/scheduler', 'apps/standalone'])
    for (const folder of compiled) for (const part of referencesOf(folder)) compiled.add(part)
    const parts = [...compiled].filter((folder) => !folder.startsWith('apps/')).map((folder) => basename(folder))
    expect([...livedThroughWith].sort()).toEqual(parts.sort())
  })

  test('a damaged history is thrown away and leaves the database empty', async () => {
    await withFolder(async (place) => {
      mkdirSync(join(place, 'a-key'))
      writeFileSync(join(place, 'a-key/waters.json'), '{}')
      const whole = readFileSync(join(entryOf(folder), 'history.tar.gz'))
      writeFileSync(join(place, 'a-key/history.tar.gz'), whole.subarray(0, whole.length / 2))
      await withDatabase(async (connectionString) => {
        expect(await restoreHistory({ folder: place, key: 'a-key', connectionString })).toBeNull()
        expect(await findFilledTable(connectionString)).toBeNull()
      })
      expect(readdirSync(place)).toEqual([])
    })
  })

  test('two that keep the same history at once leave one whole', async () => {
    await withFolder(async (place) => {
      const { connectionString } = first
      const keep = () =>
        keepHistory({ folder: place, key: 'a-key', connectionString, state: { cultures: [], batches: [] } })
      await Promise.all([keep(), keep()])
      expect(readdirSync(place)).toEqual(['a-key'])
      await withDatabase(async (empty) => {
        expect(await restoreHistory({ folder: place, key: 'a-key', connectionString: empty })).toEqual({
          cultures: [],
          batches: [],
        })
        expect(await tellRooms(empty)).toEqual(await tellRooms(connectionString))
      })
    })
  })

  test('the eight histories used last are kept', async () => {
    await withFolder(async (place) => {
      for (let age = 1; age <= 9; age += 1) {
        const path = join(place, `used-${age}-hours-ago`)
        mkdirSync(path)
        utimesSync(path, Date.now() / 1000 - age * 3600, Date.now() / 1000 - age * 3600)
      }
      await keepHistory({ folder: place, key: 'new', connectionString: first.connectionString, state: {} })
      const kept = readdirSync(place).sort()
      expect(kept).toEqual(['new', ...[1, 2, 3, 4, 5, 6, 7].map((age) => `used-${age}-hours-ago`)])
    })
  })

  test('a folder that cannot be written does no harm', async () => {
    await withFolder(async (place) => {
      const file = join(place, 'a-file')
      writeFileSync(file, '')
      const inFile = { folder: join(file, 'folder'), key: 'a-key', connectionString: first.connectionString }
      await keepHistory({ ...inFile, state: {} })
      expect(await restoreHistory(inFile)).toBeNull()
    })
  })
})

async function withFolder(use: (place: string) => Promise<void>): Promise<void> {
  const place = mkdtempSync(join(tmpdir(), 'fryward-history-'))
  try {
    await use(place)
  } finally {
    rmSync(place, { recursive: true, force: true })
  }
}
