import { spawnSync } from 'node:child_process'
import { chmodSync, closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A disk of its own that a test may fill to the last byte. */
export type SmallDisk = { folder: string; fill: () => void; makeRoom: () => void; remove: () => void }

/** Null where this machine lets nobody mount one: that takes root on Linux, and more than most containers have. */
export function mountSmallDisk(mebibytes: number): SmallDisk | null {
  const folder = mkdtempSync(join(tmpdir(), 'fryward-small-disk-'))
  const options = ['-t', 'tmpfs', '-o', `size=${mebibytes}m`, 'tmpfs', folder]
  if (process.platform !== 'linux' || spawnSync('mount', options).status !== 0) {
    rmSync(folder, { recursive: true })
    return null
  }
  chmodSync(folder, 0o755)
  const filler = join(folder, 'something-else')
  return {
    folder,
    fill: () => writeToTheEnd(filler),
    makeRoom: () => rmSync(filler, { force: true }),
    remove: () => {
      spawnSync('umount', [folder])
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

function writeToTheEnd(path: string): void {
  const file = openSync(path, 'w')
  const some = Buffer.alloc(1 << 20)
  try {
    for (;;) writeSync(file, some)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error
  } finally {
    closeSync(file)
  }
}
