import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { codeOf, messageOf, StartProblem } from './start-problem.ts'

/** Makes the data folder with its parts and proves that it can be written. Throws StartProblem. */
export function prepareDataFolder(dataDir: string): void {
  try {
    // Others may pass through, not look in: PostgreSQL's own user does when we are root.
    makeFolder(dataDir, 0o711)
    for (const part of ['logs', 'secrets']) makeFolder(join(dataDir, part), 0o700)
    const probe = join(dataDir, `.probe-${process.pid}`)
    writeFileSync(probe, '')
    rmSync(probe)
  } catch (cause) {
    throw new StartProblem(
      `The data folder ${dataDir} cannot be written (${codeOf(cause) ?? messageOf(cause)}); give this user the right to write there, or set DATA_DIR to another folder.`,
      { cause },
    )
  }
}

/** Node's own recursive mkdir never returns where a file system answers ENOENT to a parent that exists (seen under /proc). */
function makeFolder(path: string, mode: number): void {
  if (existsSync(path)) return
  const parent = dirname(path)
  if (!existsSync(parent)) makeFolder(parent, 0o755)
  mkdirSync(path, { mode })
}
