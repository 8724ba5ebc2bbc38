import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startEmbeddedPostgres, stopEmbeddedPostgres } from '@fryward/standalone'
import { PostgreSqlContainer } from '@testcontainers/postgresql'
import { getContainerRuntimeClient } from 'testcontainers'

/** A throw-away PostgreSQL 18: in a container where an engine answers, embedded elsewhere. */
export type DatabaseServer = { kind: 'Testcontainers' | 'embedded'; connectionString: string; stop(): Promise<void> }

const IMAGE = 'postgres:18-alpine'
const PREFIX = 'fryward-tests-'
const MAX_CONNECTIONS = 200

export async function startDatabaseServer(): Promise<DatabaseServer> {
  return (await startContainer()) ?? (await startEmbedded())
}

async function startContainer(): Promise<DatabaseServer | undefined> {
  try {
    await getContainerRuntimeClient()
  } catch {
    return undefined // no engine: the ordinary case on a bare machine
  }
  try {
    const container = await new PostgreSqlContainer(IMAGE)
      .withCommand([
        'postgres',
        '-c',
        'fsync=off',
        '-c',
        'full_page_writes=off',
        '-c',
        `max_connections=${MAX_CONNECTIONS}`,
      ])
      .start()
    return {
      kind: 'Testcontainers',
      connectionString: container.getConnectionUri(),
      stop: async () => {
        await container.stop()
      },
    }
  } catch (thrown) {
    console.log(
      `A container engine answers but ${IMAGE} does not start (${String(thrown)}); using embedded PostgreSQL.`,
    )
    return undefined
  }
}

async function startEmbedded(): Promise<DatabaseServer> {
  await clearUpAfterKilledRuns()
  const dataDir = mkdtempSync(join(tmpdir(), PREFIX))
  chmodSync(dataDir, 0o755) // the server's user enters it when we are root
  writeFileSync(join(dataDir, 'owner.pid'), String(process.pid))
  const server = await startEmbeddedPostgres({ dataDir, isDurable: false, maxConnections: MAX_CONNECTIONS })
  return {
    kind: 'embedded',
    connectionString: server.connectionString,
    stop: async () => {
      await server.stop()
      rmSync(dataDir, { recursive: true, force: true })
    },
  }
}

/** A run killed with -9 leaves its server behind; the next run stops exactly those whose owner is gone. */
async function clearUpAfterKilledRuns(): Promise<void> {
  for (const name of readdirSync(tmpdir()).filter((entry) => entry.startsWith(PREFIX))) {
    const dataDir = join(tmpdir(), name)
    const ownerFile = join(dataDir, 'owner.pid')
    if (!existsSync(ownerFile) || isAlive(Number(readFileSync(ownerFile, 'utf8')))) continue
    await stopEmbeddedPostgres(dataDir)
    rmSync(dataDir, { recursive: true, force: true })
  }
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (thrown) {
    return thrown instanceof Error && 'code' in thrown && thrown.code === 'EPERM'
  }
}
