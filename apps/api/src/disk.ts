import { statfs } from 'node:fs/promises'
import type { DiskState, ServerState } from '@fryward/shared'

type Space = { freeBytes: number; totalBytes: number }
export type Disk = { look: () => Promise<ServerState['disk']> }

// PostgreSQL's write-ahead log alone may grow by 1 GB between two checkpoints (max_wal_size; PostgreSQL 18 manual, "WAL
// configuration"): told at twice that. It stops for good when there is no room for the next 16 MB of it: writes end a dozen
// of those before. common practice
const littleBytes = 2e9
const fullBytes = 200e6
// A disk does not fill within this, and every write asks.
const remembersMs = 5000

/** How much room the disk of a folder has. @param read asked at most every five seconds. */
export function watchDisk(read: () => Promise<Space>, clockMs: () => number = Date.now): Disk {
  let known: { at: number; space: Promise<Space> } | undefined
  return {
    look: async () => {
      if (!known || clockMs() - known.at >= remembersMs) known = { at: clockMs(), space: read() }
      const space = await known.space
      return { state: stateOf(space), ...space }
    },
  }
}

export const readSpace = (folder: string) => async (): Promise<Space> => {
  const { bavail, blocks, bsize } = await statfs(folder)
  return { freeBytes: bavail * bsize, totalBytes: blocks * bsize }
}

function stateOf({ freeBytes }: Space): DiskState {
  if (freeBytes < fullBytes) return 'full'
  return freeBytes < littleBytes ? 'little' : 'plenty'
}
