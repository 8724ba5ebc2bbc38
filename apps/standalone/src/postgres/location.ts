import { createHash } from 'node:crypto'
import { chmodSync, existsSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { StartProblem } from '../start-problem.ts'
import { writeFileAtomically } from '../write-file.ts'
import { SHARED_STATE_FOLDER } from './binaries.ts'
import { canUse, giveTo, type ServerUser } from './server-user.ts'

/** Where one installation keeps its database: `cluster` is the data directory, `area` the folder around it. */
export type DatabaseLocation = { area: string; cluster: string; log: string; passwordFile: string }

/**
 * Finds or makes the folder of the database under `dataDir`. A clone under the home of root is closed to the server's
 * user; the database then lives under /var/lib and a pointer file in `dataDir` remembers where.
 */
export function locateDatabase(dataDir: string, user: ServerUser | undefined): DatabaseLocation {
  mkdirSync(dataDir, { recursive: true })
  const pointer = join(dataDir, 'postgres.path')
  const area = existsSync(pointer) ? readFileSync(pointer, 'utf8').trim() : join(dataDir, 'postgres')
  const location = describe(area, dataDir)
  prepare(area, user)
  if (canUse(user, area)) return location
  if (existsSync(location.cluster)) {
    throw new StartProblem(
      `The database under ${area} cannot be read by the user ${user?.name}; open its parent folders to that user (chmod a+x) and start again.`,
    )
  }
  const elsewhere = join(SHARED_STATE_FOLDER, createHash('sha256').update(dataDir).digest('hex').slice(0, 16))
  prepare(elsewhere, user)
  chmodSync(SHARED_STATE_FOLDER, 0o755)
  if (!canUse(user, elsewhere)) {
    throw new StartProblem(
      `Neither ${area} nor ${elsewhere} can be used by the user ${user?.name}; set DATA_DIR to a folder that it can reach.`,
    )
  }
  writeFileAtomically(pointer, `${elsewhere}\n`)
  return describe(elsewhere, dataDir)
}

function prepare(area: string, user: ServerUser | undefined): void {
  mkdirSync(area, { recursive: true, mode: 0o700 })
  giveTo(user, area)
}

function describe(area: string, dataDir: string): DatabaseLocation {
  return {
    area,
    cluster: join(area, '18'),
    log: join(area, 'server.log'),
    passwordFile: join(dataDir, 'secrets', 'postgres-password'),
  }
}
