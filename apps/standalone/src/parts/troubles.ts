import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { writeFileAtomically } from '../write-file.ts'

const TroublesSchema = z.array(z.object({ part: z.string(), at: z.string(), sentence: z.string() }))

export const troublesFileIn = (dataDir: string): string => join(dataDir, 'logs', 'troubles.json')

/**
 * Keeps the last time that each part ended by itself, where the API reads it for the owner of the server. A disk that
 * takes no more is told elsewhere and must not end the supervisor.
 */
export function keepTrouble(dataDir: string, trouble: { part: string; at: string; sentence: string }): void {
  const file = troublesFileIn(dataDir)
  try {
    const others = keptIn(file).filter(({ part }) => part !== trouble.part)
    writeFileAtomically(file, `${JSON.stringify([...others, trouble])}\n`)
  } catch {
    // The terminal and the part's own log still have it.
  }
}

function keptIn(file: string): z.infer<typeof TroublesSchema> {
  if (!existsSync(file)) return []
  try {
    return TroublesSchema.parse(JSON.parse(readFileSync(file, 'utf8')))
  } catch {
    // What cannot be read any more is of the past; the next trouble is not to be lost with it.
    return []
  }
}
