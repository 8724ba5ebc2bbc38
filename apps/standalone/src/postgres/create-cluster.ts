import { spawn } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { StartProblem } from '../start-problem.ts'
import { readOrMakeSecret } from '../write-file.ts'
import type { Binaries } from './binaries.ts'
import type { DatabaseLocation } from './location.ts'
import { asUser, giveTo, type ServerUser } from './server-user.ts'

/** The one superuser of an embedded server. */
export const DATABASE_USER = 'fryward'

export type ClusterPlan = {
  binaries: Binaries
  location: DatabaseLocation
  user: ServerUser | undefined
  /** False leaves out fsync: for throw-away test servers only. */
  isDurable: boolean
}

/** Makes the cluster if there is none and gives back its password. A killed start leaves no half-made cluster. */
export async function ensureCluster({ binaries, location, user, isDurable }: ClusterPlan): Promise<string> {
  const exists = existsSync(join(location.cluster, 'PG_VERSION'))
  if (exists && !existsSync(location.passwordFile)) {
    throw new StartProblem(
      `The database under ${location.area} exists but its password file ${location.passwordFile} is gone; put it back from your backup.`,
    )
  }
  const password = readOrMakeSecret(location.passwordFile)
  if (exists) return password
  for (const name of readdirSync(location.area).filter((entry) => entry.startsWith('new-'))) {
    rmSync(join(location.area, name), { recursive: true, force: true })
  }
  const unfinished = join(location.area, `new-${process.pid}`)
  mkdirSync(unfinished, { mode: 0o700 })
  giveTo(user, unfinished)
  const passwordCopy = join(location.area, `new-${process.pid}-password`)
  writeFileSync(passwordCopy, `${password}\n`, { mode: 0o600 })
  giveTo(user, passwordCopy)
  try {
    await runProgram({
      program: binaries.initdb,
      user,
      arguments: initdbArguments(unfinished, passwordCopy, isDurable),
    })
    renameSync(unfinished, location.cluster)
  } finally {
    rmSync(passwordCopy, { force: true })
    rmSync(unfinished, { recursive: true, force: true })
  }
  return password
}

// Everything that would otherwise follow from the machine's LANG is said: unset, it makes the cluster SQL_ASCII.
function initdbArguments(cluster: string, passwordCopy: string, isDurable: boolean): string[] {
  const fixed = ['--encoding=UTF8', '--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C']
  const access = [
    `--username=${DATABASE_USER}`,
    `--pwfile=${passwordCopy}`,
    '--auth=scram-sha-256',
    '--no-instructions',
  ]
  return ['-D', cluster, ...fixed, ...access, ...(isDurable ? ['--data-checksums'] : ['--no-sync'])]
}

type ProgramRun = { program: string; user: ServerUser | undefined; arguments: string[] }

/** Runs one of PostgreSQL's programs to its end; its own words are the error's. */
export function runProgram({ program, user, arguments: list }: ProgramRun): Promise<void> {
  return new Promise((resolve, reject) => {
    // Its own process group: Ctrl-C in the terminal is ours to act on. No inherited pipes may outlive pg_ctl, so `close`
    // is not waited for.
    const child = spawn(program, list, { ...asUser(user), cwd: '/', detached: true, stdio: ['ignore', 'pipe', 'pipe'] })
    let said = ''
    child.stdout.on('data', (chunk) => {
      said += chunk
    })
    child.stderr.on('data', (chunk) => {
      said += chunk
    })
    child.on('error', reject)
    child.on('exit', (code, signal) => {
      child.stdout.destroy()
      child.stderr.destroy()
      if (code === 0) resolve()
      else reject(new Error(`${program} ended with ${code ?? signal}: ${said.trim().split('\n').slice(-3).join(' ')}`))
    })
  })
}
