import { type Context, forgetOldAnswers, listRoomIds, openDays } from '@fryward/room'
import type { Database } from '@fryward/store'

export type TickLog = {
  warn: (detail: object, message: string) => void
  info: (detail: object, message: string) => void
}

/**
 * One tick: every room's lists are opened and closed as the tables say. A room that fails does not hold up the others.
 * @returns rooms in which something was written.
 */
export async function tick({
  database,
  now,
  log,
}: {
  database: Database
  now: () => string
  log: TickLog
}): Promise<string[]> {
  const contextFor = (job: string): Context => ({ database, actor: { kind: 'system', job }, now: now() })
  const written: string[] = []
  for (const roomId of await listRoomIds(contextFor('scheduler'))) {
    try {
      if (await openDays({ ctx: contextFor('scheduler'), roomId })) written.push(roomId)
    } catch (error) {
      log.warn({ err: error, roomId }, 'this room could not be worked out; the next tick tries again')
    }
  }
  return written
}

export async function sweep({
  database,
  now,
  log,
}: {
  database: Database
  now: () => string
  log: TickLog
}): Promise<void> {
  const forgotten = await forgetOldAnswers({ database, actor: { kind: 'system', job: 'sweep' }, now: now() })
  if (forgotten > 0) log.info({ forgotten }, 'answers older than 30 days forgotten')
}
