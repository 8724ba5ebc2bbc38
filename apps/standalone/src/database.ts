import { applyMigrations, openClient } from '@fryward/store'
import pg from 'pg'
import { type EmbeddedPostgres, startEmbeddedPostgres } from './postgres/embedded-server.ts'
import { messageOf, StartProblem } from './start-problem.ts'

export type InstallationDatabase = { connectionString: string; embedded: EmbeddedPostgres | undefined }

/** The database that DATABASE_URL names, or the embedded one. Throws StartProblem when it cannot be reached. */
export async function openInstallationDatabase(settings: {
  DATABASE_URL?: string | undefined
  DATA_DIR: string
}): Promise<InstallationDatabase> {
  if (settings.DATABASE_URL === undefined) {
    const embedded = await startEmbeddedPostgres({ dataDir: settings.DATA_DIR })
    return { connectionString: embedded.connectionString, embedded }
  }
  await assertReachable(settings.DATABASE_URL)
  return { connectionString: settings.DATABASE_URL, embedded: undefined }
}

/** A server that Fryward already runs on is left running. */
export async function stopUnlessAdopted({ embedded }: InstallationDatabase): Promise<void> {
  if (embedded && !embedded.isAdopted) await embedded.stop()
}

async function assertReachable(connectionString: string): Promise<void> {
  const client = new pg.Client({ connectionString, connectionTimeoutMillis: 10_000 })
  client.on('error', () => {}) // told by connect() or query() below
  try {
    await client.connect()
    const answer = await client.query('SHOW server_version_num')
    const version = Number(answer.rows[0]?.server_version_num)
    if (version < 180_000) {
      throw new StartProblem(
        `The database at ${hostOf(connectionString)} is PostgreSQL ${Math.floor(version / 10_000)}; Fryward needs 18 or later.`,
      )
    }
  } catch (cause) {
    if (cause instanceof StartProblem) throw cause
    throw new StartProblem(
      `The database at ${hostOf(connectionString)} cannot be used (${reasonOf(cause)}); check DATABASE_URL, or unset it to use the embedded PostgreSQL.`,
      { cause },
    )
  } finally {
    await client.end()
  }
}

/** Host, port and name only: the password must not reach the terminal. */
function hostOf(connectionString: string): string {
  const url = new URL(connectionString)
  return `${url.host}${url.pathname}`
}

function reasonOf(cause: unknown): string {
  if (cause instanceof AggregateError) return cause.errors.map(messageOf).join(', ')
  return messageOf(cause)
}

export async function migrate(connectionString: string, log: (sentence: string) => void): Promise<void> {
  try {
    await applyMigrations({ connectionString, log })
  } catch (cause) {
    throw new StartProblem(messageOf(cause), { cause })
  }
}

/** Whether nobody has signed up and no room was set up. */
export async function isEmpty(connectionString: string): Promise<boolean> {
  const client = await openClient(connectionString)
  try {
    const answer = await client.query<{ is_empty: boolean }>(
      'SELECT NOT EXISTS (SELECT 1 FROM room) AND NOT EXISTS (SELECT 1 FROM "user") AS is_empty',
    )
    return answer.rows[0]?.is_empty === true
  } finally {
    await client.end()
  }
}
