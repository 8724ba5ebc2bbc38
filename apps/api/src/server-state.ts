import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { type ServerState, ServerStateSchema } from '@fryward/shared'
import type { Disk } from './disk.ts'

const weekMs = 7 * 86_400_000

/** What whoever claimed the server should know of its machine. */
export async function readServerState({
  disk,
  troublesFile,
  now,
}: {
  disk: Disk | null
  troublesFile: string | null
  now: string
}): Promise<ServerState> {
  const since = new Date(Date.parse(now) - weekMs).toISOString()
  const troubles = troublesFile ? await readTroubles(troublesFile) : []
  return { disk: (await disk?.look()) ?? null, troubles: troubles.filter(({ at }) => at >= since) }
}

/** What the supervisor of this process keeps of parts that ended by themselves. */
async function readTroubles(file: string): Promise<ServerState['troubles']> {
  if (!existsSync(file)) return []
  const text = await readFile(file, 'utf8')
  return ServerStateSchema.shape.troubles.parse(JSON.parse(text))
}
