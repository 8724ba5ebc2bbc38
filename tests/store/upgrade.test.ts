import { createWriteStream, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { tick } from '@fryward/scheduler'
import { applyMigrations, migrationsFolder, openDatabase, restoreBackup, writeBackup } from '@fryward/store'
import type pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { createTestDatabase, type TestDatabase } from '../support/database.ts'
import { withClient } from '../support/database-admin.ts'
import { openWorld, type World } from '../support/world.ts'
import { liveThroughFourDays } from './four-days.ts'

// There is no released version yet: any migration may be the last that somebody's database has. Tried are the first, the one
// before the newest, and whatever comes before a migration that does more than add. What a version before wrote is what is
// written today without the columns, tables and words that it did not have, and with the columns that were taken away since.
const names = readdirSync(migrationsFolder).sort()
const changesWhatIsThere = /^\s*(UPDATE|DELETE|INSERT)\b|\bDROP (COLUMN|CONSTRAINT|INDEX|TABLE)\b|\bSET NOT NULL\b/im
const sqlOf = (name: string) => readFileSync(join(migrationsFolder, name, 'migration.sql'), 'utf8')
const schemas = names.filter(
  (_name, at) => at === 0 || at === names.length - 2 || changesWhatIsThere.test(sqlOf(names[at + 1] ?? names[at]!)),
)

let world: World
let folder: string
let rows: Map<string, Rows>
let wanted: string[]
const databases: TestDatabase[] = []

beforeAll(async () => {
  world = await openWorld()
  folder = mkdtempSync(join(tmpdir(), 'fryward-upgrade-'))
  await liveThroughFourDays(world)
  rows = await rowsOf(world.database.connectionString)
  wanted = await nextDay(await databaseOf(names.at(-1)!))
})
afterAll(async () => {
  await world.close()
  for (const database of databases) await database.drop()
  rmSync(folder, { recursive: true, force: true })
})

async function emptyDatabase(): Promise<string> {
  const database = await createTestDatabase({ isEmpty: true })
  databases.push(database)
  return database.connectionString
}

type Rows = Record<string, unknown>[]
const takenAway: Record<string, Record<string, unknown>> = { idempotency_key: { status: 200 } }

async function tablesIn(client: pg.Client): Promise<Map<string, Set<string>>> {
  const { rows } = await client.query<{ name: string; columns: string[] }>(
    `SELECT table_name AS name, array_agg(column_name::text) AS columns FROM information_schema.columns
     JOIN information_schema.tables USING (table_schema, table_name)
     WHERE table_schema = 'public' AND table_type = 'BASE TABLE' AND table_name <> '_prisma_migrations' GROUP BY 1`,
  )
  return new Map(rows.map(({ name, columns }) => [name, new Set(columns)]))
}

/** Every row of a database of today, by its table. */
const rowsOf = (connectionString: string): Promise<Map<string, Rows>> =>
  withClient(connectionString, async (client) => {
    const found = new Map<string, Rows>()
    for (const name of (await tablesIn(client)).keys()) {
      const { rows } = await client.query<{ row: Record<string, unknown> }>(`SELECT to_json(t) AS row FROM "${name}" t`)
      found.set(
        name,
        rows.map(({ row }) => row),
      )
    }
    return found
  })

/** A database as that version left it, with as much of these rows as it had a place for. */
async function databaseOf(schema: string): Promise<string> {
  const connectionString = await emptyDatabase()
  await applyMigrations({ connectionString, upTo: schema })
  await withClient(connectionString, async (client) => {
    let waiting = [...(await tablesIn(client))].filter(([name]) => rows.has(name))
    while (waiting.length > 0) {
      const left: typeof waiting = []
      for (const table of waiting) if (!(await fill(client, table, rows.get(table[0])!))) left.push(table)
      if (left.length === waiting.length) throw new Error(`${left.map(([name]) => name)} take no rows`)
      waiting = left
    }
  })
  return connectionString
}

/** False where rows point at ones that are not there yet. */
async function fill(client: pg.Client, [name, columns]: [string, Set<string>], rows: Rows): Promise<boolean> {
  const then = rows.map((row) => ({ ...takenAway[name], ...row }))
  const known = Object.keys(then[0] ?? {}).filter((column) => columns.has(column))
  if (known.length === 0) return true
  const list = known.map((column) => `"${column}"`).join(', ')
  try {
    await client.query(
      `INSERT INTO "${name}" (${list}) SELECT ${list} FROM json_populate_recordset(NULL::"${name}", $1)`,
      [JSON.stringify(then)],
    )
    return true
  } catch (error) {
    if ((error as pg.DatabaseError).code === '23503') return false
    throw error
  }
}

/** The list of a day that nobody has opened yet, as this version works it out. */
async function nextDay(connectionString: string): Promise<string[]> {
  const database = openDatabase({ connectionString, maxConnections: 3 })
  const warnings: string[] = []
  const log = { warn: (_detail: object, message: string) => warnings.push(message), info: () => undefined }
  const tomorrow = new Date(Date.parse(world.clock.now()) + 86_400_000).toISOString()
  await tick({ database, now: () => tomorrow, log })
  const { rows: lines } = await database.pool.query<{ line: string }>(
    `SELECT concat_ws(' ', round_id, rule_id, subject_id, content->'title', content->'amount') AS line
     FROM task WHERE on_date = $1 AND state = 'open' ORDER BY 1`,
    [tomorrow.slice(0, 10)],
  )
  await database.close()
  expect(warnings).toEqual([])
  return lines.map(({ line }) => line)
}

const countRows = async (connectionString: string) =>
  new Map([...(await rowsOf(connectionString))].map(([name, found]) => [name, found.length]))

test.each(schemas)(
  'a room that lived in the schema of %s is upgraded whole, and its next day is listed',
  async (schema) => {
    const connectionString = await databaseOf(schema)
    const before = await countRows(connectionString)
    expect(before.get('fact')).toBeGreaterThan(10)
    expect((await applyMigrations({ connectionString })).applied).toEqual(names.slice(names.indexOf(schema) + 1))
    expect(await countRows(connectionString)).toEqual(
      new Map([...(await countRows(connectionString)).keys()].map((name) => [name, before.get(name) ?? 0])),
    )
    expect(wanted.length).toBeGreaterThan(5)
    expect(await nextDay(connectionString)).toEqual(wanted)
  },
)

test('a backup that the first version wrote is restored by this one', async () => {
  const file = join(folder, 'old.tar.gz')
  const output = createWriteStream(file)
  await writeBackup({ connectionString: await databaseOf(names[0]!), output, now: world.clock.now() })
  const connectionString = await emptyDatabase()
  await restoreBackup({ connectionString, file })
  expect(await nextDay(connectionString)).toEqual(wanted)
})
