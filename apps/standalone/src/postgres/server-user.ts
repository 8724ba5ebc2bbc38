import { spawnSync } from 'node:child_process'
import { chownSync } from 'node:fs'
import { StartProblem } from '../start-problem.ts'

/** The unprivileged user that PostgreSQL runs as when we are root (it refuses root), by number. */
export type ServerUser = { name: string; uid: number; gid: number }

// `nobody` comes last: other services may share it. PostgreSQL looks its own name up, so a bare number does not do.
const CANDIDATES = ['fryward', 'postgres', 'nobody']

/** Undefined when we are not root: PostgreSQL then runs as ourselves. */
export function findServerUser(): ServerUser | undefined {
  if (process.getuid?.() !== 0) return undefined
  for (const name of CANDIDATES) {
    const uid = idOf('-u', name)
    const gid = idOf('-g', name)
    if (uid !== undefined && uid !== 0 && gid !== undefined) return { name, uid, gid }
  }
  throw new StartProblem(
    `PostgreSQL refuses to run as root and none of the users ${CANDIDATES.join(', ')} exists here; add a user named fryward, start as an ordinary user, or set DATABASE_URL.`,
  )
}

/** Options that make a child process run as that user. */
export function asUser(user: ServerUser | undefined): { uid?: number; gid?: number } {
  return user === undefined ? {} : { uid: user.uid, gid: user.gid }
}

export function giveTo(user: ServerUser | undefined, path: string): void {
  if (user !== undefined) chownSync(path, user.uid, user.gid)
}

/** Whether that user can enter the folder and write there, asked of the system itself (every parent counts). */
export function canUse(user: ServerUser | undefined, folder: string): boolean {
  if (user === undefined) return true
  const script = 'test -x "$1" && test -w "$1" && cd "$1"'
  return spawnSync('/bin/sh', ['-c', script, 'sh', folder], { ...asUser(user), cwd: '/' }).status === 0
}

function idOf(flag: '-u' | '-g', name: string): number | undefined {
  const run = spawnSync('id', [flag, name], { encoding: 'utf8' })
  const id = Number.parseInt(run.stdout ?? '', 10)
  return run.status === 0 && Number.isInteger(id) ? id : undefined
}
