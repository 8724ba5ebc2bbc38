import { spawnSync } from 'node:child_process'
import { closeSync, existsSync, openSync, readFileSync, rmSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { codeOf, StartProblem } from './start-problem.ts'

export type InstanceLock = {
  /** True when an earlier run ended without releasing: its children may need a moment to go. */
  wasLeftBehind: boolean
  release(): void
}

/**
 * Lets one instance at a time use the data folder. A lock left by a killed run is taken over at once: the libraries that
 * do this judge by the age of a file, which a restart would have to wait out and a machine's sleep deceives.
 */
export function lockDataFolder(dataDir: string): InstanceLock {
  const path = join(dataDir, 'instance.lock')
  const wasLeftBehind = existsSync(path)
  if (wasLeftBehind) {
    const [pid = '', startedAt = ''] = readFileSync(path, 'utf8').split('\n')
    if (startedAt !== '' && startOf(Number(pid)) === startedAt) {
      throw new StartProblem(
        `Fryward already runs on ${dataDir} (process ${pid}); stop that one first, or set DATA_DIR to another folder.`,
      )
    }
    rmSync(path, { force: true })
  }
  try {
    const file = openSync(path, 'wx', 0o600)
    writeSync(file, `${process.pid}\n${startOf(process.pid)}\n`)
    closeSync(file)
  } catch (cause) {
    if (codeOf(cause) !== 'EEXIST') throw cause
    throw new StartProblem(`Another start of Fryward on ${dataDir} is under way; wait for it, or stop it.`, { cause })
  }
  return { wasLeftBehind, release: () => rmSync(path, { force: true }) }
}

/**
 * When a process began, as the system writes it: a number alone may have been given to another program since. Undefined
 * for one that has ended, also where nobody has fetched its exit code yet.
 */
function startOf(pid: number): string | undefined {
  const stat = `/proc/${pid}/stat`
  if (existsSync('/proc/self/stat')) {
    if (!existsSync(stat)) return undefined
    const text = readFileSync(stat, 'utf8')
    const fields = text.slice(text.lastIndexOf(')') + 2).split(' ')
    return fields[0] === 'Z' ? undefined : fields[19] // fields 3 and 22 of proc(5): state, starttime
  }
  const [program, list] =
    process.platform === 'win32'
      ? ['powershell', ['-NoProfile', '-Command', `(Get-Process -Id ${pid}).StartTime.Ticks`]]
      : ['ps', ['-o', 'lstart=', '-p', String(pid)]]
  const run = spawnSync(program as string, list as string[], { encoding: 'utf8' })
  return run.status === 0 ? run.stdout.trim() : undefined
}
