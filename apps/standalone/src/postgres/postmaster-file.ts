import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

export type Postmaster = { pid: number; port: number }

/** What the running (or crashed) server wrote about itself; undefined when there is no such file or it is unfinished. */
export function readPostmaster(cluster: string): Postmaster | undefined {
  const path = join(cluster, 'postmaster.pid')
  if (!existsSync(path)) return undefined
  const lines = readFileSync(path, 'utf8').split('\n')
  const pid = Number.parseInt(lines[0] ?? '', 10)
  const port = Number.parseInt(lines[3] ?? '', 10)
  return Number.isInteger(pid) && Number.isInteger(port) ? { pid, port } : undefined
}

export type PidOwner = 'nobody' | 'this server' | 'another program'

/** Whose process has that number now: after a crash or a reboot the system may have given it to anything. */
export function ownerOfPid(pid: number, cluster: string): PidOwner {
  if (!isAlive(pid)) return 'nobody'
  const commandLine = commandLineOf(pid)
  if (commandLine === undefined || commandLine.includes(cluster)) return 'this server'
  return 'another program'
}

/**
 * Names ourselves as the owner of a stale lock. PostgreSQL takes a lock held by the process that starts it as stale, yet
 * still checks that no orphan of the old server uses its shared memory, which deleting the file would switch off.
 */
export function disownPostmaster(cluster: string): void {
  const path = join(cluster, 'postmaster.pid')
  const lines = readFileSync(path, 'utf8').split('\n')
  writeFileSync(path, [String(process.pid), ...lines.slice(1)].join('\n'))
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (thrown) {
    return thrown instanceof Error && 'code' in thrown && thrown.code === 'EPERM'
  }
}

/** Undefined where the system does not tell; the caller then assumes the worst. */
function commandLineOf(pid: number): string | undefined {
  const file = `/proc/${pid}/cmdline`
  if (existsSync(file)) return readFileSync(file, 'utf8').replaceAll('\0', ' ')
  if (process.platform === 'win32') return undefined
  const run = spawnSync('ps', ['-ww', '-o', 'command=', '-p', String(pid)], { encoding: 'utf8' })
  return run.status === 0 ? run.stdout : undefined
}
