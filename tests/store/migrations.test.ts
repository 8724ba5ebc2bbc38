import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { applyMigrations, migrationsFolder } from '@fryward/store'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { schemaDiff } from '../../prisma/schema-diff.mjs'
import { readCatalog } from '../support/catalog.ts'
import { createTestDatabase, type TestDatabase } from '../support/database.ts'
import { withClient } from '../support/database-admin.ts'

const names = readdirSync(migrationsFolder).sort()
const databases: TestDatabase[] = []
let folder: string

async function emptyDatabase(): Promise<string> {
  const database = await createTestDatabase({ isEmpty: true })
  databases.push(database)
  return database.connectionString
}

function addMigration(name: string, sql: string): void {
  mkdirSync(join(folder, name))
  writeFileSync(join(folder, name, 'migration.sql'), sql)
}

async function ledgerOf(connectionString: string): Promise<string[]> {
  return withClient(connectionString, async (client) => {
    const answer = await client.query<{ migration_name: string }>(
      'SELECT migration_name FROM _prisma_migrations WHERE finished_at IS NOT NULL ORDER BY 1',
    )
    return answer.rows.map((row) => row.migration_name)
  })
}

describe('the migrations', () => {
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'fryward-migrations-'))
    cpSync(migrationsFolder, folder, { recursive: true })
  })

  afterAll(async () => {
    rmSync(folder, { recursive: true, force: true })
    for (const database of databases) await database.drop()
  })

  it('make from empty what the schema says, and only add what a schema cannot say', async () => {
    const migrated = await emptyDatabase()
    const fromSchema = await emptyDatabase()
    expect((await applyMigrations({ connectionString: migrated })).applied).toEqual(names)
    const schema = readFileSync(join(migrationsFolder, '../schema.prisma'), 'utf8')
    const script = await schemaDiff({ from: null, to: schema })
    await withClient(fromSchema, (client) => client.query(script))

    const { extras, ...made } = await readCatalog(migrated)
    const { extras: extrasFromSchema, ...wanted } = await readCatalog(fromSchema)
    expect(wanted.columns.length).toBeGreaterThan(100)
    expect(made).toEqual(wanted)
    expect(extrasFromSchema).toEqual([])
    expect(extras).toContain('fact trigger fact_append_only')
  })

  it('are nothing the second time', async () => {
    const connectionString = await emptyDatabase()
    await applyMigrations({ connectionString })
    const before = await readCatalog(connectionString)
    expect(await applyMigrations({ connectionString })).toEqual({ applied: [] })
    expect(await readCatalog(connectionString)).toEqual(before)
    expect(await ledgerOf(connectionString)).toEqual(names)
  })

  it('are applied once by two runners at the same moment', async () => {
    const connectionString = await emptyDatabase()
    const runs = await Promise.all([applyMigrations({ connectionString }), applyMigrations({ connectionString })])
    expect(runs.map((run) => run.applied.length).sort()).toEqual([0, names.length])
    expect(await ledgerOf(connectionString)).toEqual(names)
  })

  it('are refused when the database has a later one that the files lack', async () => {
    const connectionString = await emptyDatabase()
    addMigration('29990101000000_from_the_future', 'CREATE TABLE future (id int)')
    await applyMigrations({ connectionString, folder })
    rmSync(join(folder, '29990101000000_from_the_future'), { recursive: true })
    await expect(applyMigrations({ connectionString, folder })).rejects.toThrow(
      'The database has the migration 29990101000000_from_the_future, which this version of Fryward does not know',
    )
  })

  it('are refused when an applied file was changed', async () => {
    const connectionString = await emptyDatabase()
    addMigration('29990102000000_edited', 'CREATE TABLE edited (id int)')
    await applyMigrations({ connectionString, folder })
    writeFileSync(join(folder, '29990102000000_edited', 'migration.sql'), 'CREATE TABLE edited (id bigint)')
    await expect(applyMigrations({ connectionString, folder })).rejects.toThrow(
      'The migration 29990102000000_edited was changed after it was applied',
    )
    rmSync(join(folder, '29990102000000_edited'), { recursive: true })
  })

  it('leave nothing behind from a file that fails halfway', async () => {
    const connectionString = await emptyDatabase()
    await applyMigrations({ connectionString, folder })
    const before = await readCatalog(connectionString)
    addMigration('29990103000000_broken', "CREATE TABLE half (note text DEFAULT 'a;b'); SELECT 1/0;")
    await expect(applyMigrations({ connectionString, folder })).rejects.toThrow(
      'The migration 29990103000000_broken failed and was undone: division by zero',
    )
    expect(await readCatalog(connectionString)).toEqual(before)
    expect(await ledgerOf(connectionString)).toEqual(names)

    writeFileSync(
      join(folder, '29990103000000_broken', 'migration.sql'),
      "CREATE TABLE half (note text DEFAULT 'a;b');",
    )
    expect((await applyMigrations({ connectionString, folder })).applied).toEqual(['29990103000000_broken'])
    rmSync(join(folder, '29990103000000_broken'), { recursive: true })
  })

  it('keep the ledger in the shape that the stock Prisma CLI reads', async () => {
    const connectionString = await emptyDatabase()
    await applyMigrations({ connectionString })
    const rows = await withClient(connectionString, (client) => client.query('SELECT * FROM _prisma_migrations'))
    const columns = ['id', 'checksum', 'finished_at', 'migration_name', 'logs', 'rolled_back_at', 'started_at']
    expect(rows.fields.map((field) => field.name)).toEqual([...columns, 'applied_steps_count'])
    for (const row of rows.rows) expect(row.checksum).toMatch(/^[0-9a-f]{64}$/)
  })
})
