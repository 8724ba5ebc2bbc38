import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { PassThrough } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { pipeline } from 'node:stream/promises'
import { constants, createGunzip, createGzip, gunzipSync, gzipSync } from 'node:zlib'
import { restoreBackup, writeBackup } from '@fryward/store'
import pg from 'pg'
import { extract, pack } from 'tar-stream'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { createTestDatabase, type TestDatabase } from '../support/database.ts'
import { openWorld, type World } from '../support/world.ts'
import { liveThroughFourDays } from './four-days.ts'

let world: World
let folder: string
let file: string
const databases: TestDatabase[] = []
const photo = {
  path: `ab/${'ab'.repeat(32)}.full.jpg`,
  bytes: Buffer.from('not really a picture, but bytes all the same'),
}

beforeAll(async () => {
  world = await openWorld()
  folder = mkdtempSync(join(tmpdir(), 'fryward-backup-test-'))
  file = join(folder, 'room.tar.gz')
  await liveThroughFourDays(world)
  mkdirSync(join(folder, 'photos/ab'), { recursive: true })
  writeFileSync(join(folder, 'photos', photo.path), photo.bytes)
  await backUp(file)
})
afterAll(async () => {
  await world.close()
  for (const database of databases) await database.drop()
  rmSync(folder, { recursive: true, force: true })
})

async function backUp(path: string): Promise<void> {
  await writeBackup({
    connectionString: world.database.connectionString,
    photosFolder: join(folder, 'photos'),
    output: createWriteStream(path),
    now: world.clock.now(),
  })
}

type Manifest = {
  photos: Record<string, unknown>[]
  tables: (Record<string, unknown> & { columns: unknown[] })[]
}
function rename(thing: object, key: string | number, name: string) {
  Object.assign(thing, { [key]: name })
}

/** The same archive with another manifest in it. */
async function rewriteManifest(from: string, { to, alter }: { to: string; alter: (manifest: Manifest) => unknown }) {
  const tar = pack()
  const written = pipeline(tar, createGzip(), createWriteStream(to))
  const entries = extract()
  const read = pipeline(createReadStream(from), createGunzip(), entries)
  for await (const entry of entries) {
    const body = await buffer(entry)
    if (entry.header.name !== 'manifest.json') {
      tar.entry({ name: entry.header.name }, body)
      continue
    }
    const manifest: Manifest = JSON.parse(body.toString())
    alter(manifest)
    tar.entry({ name: 'manifest.json' }, JSON.stringify(manifest))
  }
  tar.finalize()
  await Promise.all([read, written])
}

async function emptyDatabase(): Promise<string> {
  const database = await createTestDatabase({ isEmpty: true })
  databases.push(database)
  return database.connectionString
}

/** Every row of every table as text, in one order. */
async function everything(connectionString: string): Promise<Record<string, string[]>> {
  const client = new pg.Client({ connectionString })
  await client.connect()
  try {
    const tables = await client.query<{ name: string }>(
      "SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE' AND table_name <> '_prisma_migrations' ORDER BY 1",
    )
    const rows: Record<string, string[]> = {}
    for (const { name } of tables.rows) {
      const found = await client.query<{ row: string }>(`SELECT t::text AS row FROM "${name}" t`)
      rows[name] = found.rows.map(({ row }) => row).sort()
    }
    return rows
  } finally {
    await client.end()
  }
}

test('a restored room is the same, row for row, with its photos', async () => {
  const connectionString = await emptyDatabase()
  const photosFolder = join(folder, 'restored')
  await restoreBackup({ connectionString, file, photosFolder })
  const before = await everything(world.database.connectionString)
  const filled = Object.keys(before).filter((table) => before[table]!.length > 0)
  const wanted = [
    'room',
    'subject',
    'fact',
    'task',
    'sign_off',
    'audit_entry',
    'note',
    'clutch',
    'idempotency_key',
    'session',
  ]
  expect(filled).toEqual(expect.arrayContaining(wanted))
  expect(before.fact!.length).toBeGreaterThan(5)
  // Who is signed in where, and how often somebody tried, is no part of a room.
  expect(await everything(connectionString)).toEqual({
    ...before,
    ...{ session: [], rate_limit: [], verification: [], two_factor: [], used_code: [], password_reset: [] },
    broker_password: [],
    user: before.user!.map(withoutSecondFactor),
  })
  expect(readFileSync(join(photosFolder, photo.path))).toEqual(photo.bytes)
})

/** Asked for after a restore, it would shut its person out: its secret stayed behind. */
const withoutSecondFactor = (row: string) => row.replace(/,t\)$/, ',f)')

test('a download grows with every table, however long the next one takes', async () => {
  const client = new pg.Client({ connectionString: world.database.connectionString })
  await client.connect()
  await client.query('BEGIN; LOCK TABLE webhook')
  const output = new PassThrough()
  const chunks: Buffer[] = []
  output.on('data', (chunk) => chunks.push(chunk))
  const { connectionString } = world.database
  const written = writeBackup({ connectionString, output, now: world.clock.now() })
  const soFar = () => gunzipSync(Buffer.concat(chunks), { finishFlush: constants.Z_SYNC_FLUSH })
  // The last one before it, by the alphabet.
  await vi.waitFor(() => expect(soFar().includes('verification.copy')).toBe(true), 60_000)
  await client.query('ROLLBACK')
  await client.end()
  await written
  expect(soFar().includes('manifest.json')).toBe(true)
})

test('no session stands in a backup: nobody gets in with what a file holds', async () => {
  const tar = gunzipSync(readFileSync(file))
  const sessions = await world.database.prisma.session.findMany()
  expect(sessions.length).toBeGreaterThan(1)
  for (const { token } of sessions) expect(tar.includes(token)).toBe(false)
  const { sealed } = await world.database.prisma.brokerPassword.findFirstOrThrow()
  expect(tar.includes(sealed)).toBe(false)
})

test('a database that holds anything is refused and left as it is', async () => {
  const before = await everything(world.database.connectionString)
  await expect(restoreBackup({ connectionString: world.database.connectionString, file })).rejects.toThrow(/not empty/)
  expect(await everything(world.database.connectionString)).toEqual(before)
})

test('a changed byte is noticed before anything is written', async () => {
  const damaged = join(folder, 'damaged.tar.gz')
  const tar = gunzipSync(readFileSync(file))
  const at = tar.indexOf('wrong vessel')
  expect(at).toBeGreaterThan(0)
  tar[at] = 'W'.charCodeAt(0)
  writeFileSync(damaged, gzipSync(tar))
  const connectionString = await emptyDatabase()
  await expect(restoreBackup({ connectionString, file: damaged })).rejects.toThrow(/damaged or missing/)
  expect(await everything(connectionString)).toEqual({})
})

test('a file cut short, or of another kind, is refused with a sentence', async () => {
  const short = join(folder, 'short.tar.gz')
  writeFileSync(short, readFileSync(file).subarray(0, 2000))
  await expect(restoreBackup({ connectionString: await emptyDatabase(), file: short })).rejects.toThrow(
    /cannot be read as a backup/,
  )
  const other = join(folder, 'other.txt')
  writeFileSync(other, 'a shopping list')
  await expect(restoreBackup({ connectionString: await emptyDatabase(), file: other })).rejects.toThrow(
    /cannot be read as a backup/,
  )
})

test.each([
  [
    'a photo outside its folder',
    (manifest: Manifest) => rename(manifest.photos[0]!, 'path', 'ab/../../tables/user.copy'),
    /does not know/,
  ],
  [
    'a photo that another is',
    (manifest: Manifest) => rename(manifest.photos[0]!, 'path', `cd/${'ab'.repeat(32)}.full.jpg`),
    /does not know/,
  ],
  [
    "a table of PostgreSQL's own",
    (manifest: Manifest) => rename(manifest.tables[0]!, 'name', 'pg_authid'),
    /damaged or missing|no backup of this version/,
  ],
  [
    'the ledger of migrations',
    (manifest: Manifest) => rename(manifest.tables[0]!, 'name', '_prisma_migrations'),
    /does not know/,
  ],
  [
    'a column that is none',
    (manifest: Manifest) => rename(manifest.tables[0]!.columns, 0, 'ctid'),
    /no backup of this version/,
  ],
  ['one table twice', (manifest: Manifest) => manifest.tables.push(manifest.tables[0]!), /no backup of this version/],
])('a manifest that names %s restores nothing', async (_what, alter, refusal) => {
  const altered = join(folder, 'altered.tar.gz')
  await rewriteManifest(file, { to: altered, alter })
  const connectionString = await emptyDatabase()
  const photosFolder = join(folder, 'never', 'photos')
  await expect(restoreBackup({ connectionString, file: altered, photosFolder })).rejects.toThrow(refusal)
  for (const rows of Object.values(await everything(connectionString))) expect(rows).toEqual([])
  expect(existsSync(join(folder, 'never'))).toBe(false)
})

/** A gzipped tar of these entries. */
async function archiveOf(to: string, entries: [header: { name: string }, content: string | Buffer][]): Promise<string> {
  const tar = pack()
  const written = pipeline(tar, createGzip({ level: 9 }), createWriteStream(to))
  for (const [header, content] of entries) tar.entry(header, content)
  tar.finalize()
  await written
  return to
}

test.each<[string, { name: string }]>([
  ['a path out of its folder', { name: '../../escaped.copy' }],
  ['a path from the root', { name: '/tmp/escaped.copy' }],
  ['a way out in the middle', { name: 'tables/../../escaped.copy' }],
  ['a file of no name of ours', { name: 'tables/room.sql' }],
])('an archive with %s is refused, and nothing is written for it', async (_what, header) => {
  const foreign = await archiveOf(join(folder, 'foreign.tar.gz'), [[header, 'out']])
  const connectionString = await emptyDatabase()
  await expect(restoreBackup({ connectionString, file: foreign })).rejects.toThrow(/which no backup of Fryward does/)
  expect(existsSync(join(tmpdir(), 'escaped.copy'))).toBe(false)
  expect(await everything(connectionString)).toEqual({})
})

test('an archive that unpacks to fill a disk ends long before it has', async () => {
  const bomb = await archiveOf(join(folder, 'bomb.tar.gz'), [
    [{ name: 'tables/room.copy' }, Buffer.alloc(72 * 1024 ** 2)],
  ])
  const connectionString = await emptyDatabase()
  await expect(restoreBackup({ connectionString, file: bomb })).rejects.toThrow(/unpacks to far more than a room holds/)
  expect(await everything(connectionString)).toEqual({})
})

test('a backup of a later version is refused', async () => {
  const later = join(folder, 'later.tar.gz')
  const tar = gunzipSync(readFileSync(file))
  // Same length, so that the tar's own sizes still hold.
  const from = tar.lastIndexOf('juveniles_notes_photos')
  tar.write('juveniles_notes_phxtos', from)
  writeFileSync(later, gzipSync(tar))
  await expect(restoreBackup({ connectionString: await emptyDatabase(), file: later })).rejects.toThrow(/later version/)
})
