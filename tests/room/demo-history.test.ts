import { execFile } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join, relative, resolve } from 'node:path'
import { promisify } from 'node:util'
import { gunzipSync } from 'node:zlib'
import { findFilledTable, openDatabase, restoreBackup } from '@fryward/store'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { historyKey, keepHistory, livedThroughWith, restoreHistory } from '../../prisma/demo/kept-history.mjs'
import { createTestDatabase, type TestDatabase } from '../support/database.ts'
import { tellRooms } from '../support/room-by-name.ts'

const seed = join(import.meta.dirname, '../../prisma/demo/seed.mjs')
const built = { DEMO_NOW: '2026-03-11T10:00:00.000Z', DEMO_TIME_ZONE: 'Europe/Lisbon' }

let folder: string
let first: TestDatabase
let second: TestDatabase
let told: { first: string; second: string }

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

/** What the seeding says while it works; it ends with its sign-ins on the other stream. */
async function fill({ connectionString }: TestDatabase): Promise<string> {
  const env = { ...process.env, ...built, DATABASE_URL: connectionString, DEMO_CACHE_DIR: folder }
  return (await promisify(execFile)(process.execPath, [seed], { env })).stderr
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

test('a room whose history was kept is the room that was lived through', async () => {
  expect(told.first).not.toContain('was kept')
  expect(told.second).toContain('was kept')
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

async function withFolder(use: (place: string) => Promise<void>): Promise<void> {
  const place = mkdtempSync(join(tmpdir(), 'fryward-history-'))
  try {
    await use(place)
  } finally {
    rmSync(place, { recursive: true, force: true })
  }
}
