import { randomUUID } from 'node:crypto'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type pg from 'pg'
import { openClient } from '../open-client.ts'
import { type MigrationFile, readMigrationFiles } from './migration-files.ts'
import { type AppliedMigration, derivePending } from './pending-migrations.ts'

/** The project's own migrations; the same depth from `src` and from `dist`. */
export const migrationsFolder = join(dirname(fileURLToPath(import.meta.url)), '../../../../prisma/migrations')

export type ApplyMigrationsOptions = {
  connectionString: string
  /** Folder of `<name>/migration.sql`; the project's own by default. */
  folder?: string
  /** Name of the last migration to apply; the folder's last by default. A restore stops where its backup was. */
  upTo?: string
  /** Told once for each file, before it is applied. */
  log?: (sentence: string) => void
}

// The number that the stock Prisma CLI locks, so that it and this runner exclude each other.
const LOCK_KEY = 72707369

// The shape that the stock Prisma CLI makes and reads.
const LEDGER = `CREATE TABLE IF NOT EXISTS _prisma_migrations (
  id varchar(36) PRIMARY KEY NOT NULL,
  checksum varchar(64) NOT NULL,
  finished_at timestamptz,
  migration_name varchar(255) NOT NULL,
  logs text,
  rolled_back_at timestamptz,
  started_at timestamptz NOT NULL DEFAULT now(),
  applied_steps_count integer NOT NULL DEFAULT 0
)`

/**
 * Brings the database up to the folder's last migration: one transaction a file, so that a failing one leaves nothing
 * behind. Two callers at once wait for each other. Throws MigrationRefused when the database has a migration that the
 * folder lacks, or when an applied file was changed.
 */
export async function applyMigrations(options: ApplyMigrationsOptions): Promise<{ applied: string[] }> {
  const { connectionString, folder = migrationsFolder, upTo, log = () => {} } = options
  const files = readMigrationFiles(folder)
  const client = await openClient(connectionString)
  try {
    // Released with the connection, whatever happens.
    await client.query('SELECT pg_advisory_lock($1)', [LOCK_KEY])
    await client.query(LEDGER)
    const pending = derivePending(files, await readApplied(client)).filter(
      (file) => upTo === undefined || file.name <= upTo,
    )
    for (const file of pending) {
      log(`Applying migration ${file.name}`)
      await applyFile(client, file)
    }
    return { applied: pending.map((file) => file.name) }
  } finally {
    await client.end()
  }
}

async function readApplied(client: pg.Client): Promise<AppliedMigration[]> {
  const answer = await client.query<{ migration_name: string; checksum: string; is_finished: boolean }>(
    `SELECT migration_name, checksum, finished_at IS NOT NULL AS is_finished
     FROM _prisma_migrations WHERE rolled_back_at IS NULL ORDER BY migration_name`,
  )
  return answer.rows.map((row) => ({ name: row.migration_name, checksum: row.checksum, isFinished: row.is_finished }))
}

async function applyFile(client: pg.Client, { name, sql, checksum }: MigrationFile): Promise<void> {
  await client.query('BEGIN')
  try {
    // Without parameters pg uses the simple protocol: the server itself splits the script, whatever it quotes.
    await client.query(sql)
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, finished_at, migration_name, applied_steps_count)
       VALUES ($1, $2, clock_timestamp(), $3, 1)`,
      [randomUUID(), checksum, name],
    )
    await client.query('COMMIT')
  } catch (cause) {
    await client.query('ROLLBACK')
    const reason = cause instanceof Error ? cause.message : String(cause)
    throw new Error(`The migration ${name} failed and was undone: ${reason}`, { cause })
  }
}
