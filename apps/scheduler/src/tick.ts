import {
  addUpReadings,
  type Context,
  forgetOldAnswers,
  forgetOldSignInTries,
  forgetWhatHasEnded,
  listRoomIds,
  makeRoomForReadings,
  openDays,
  watchGauges,
} from '@fryward/room'
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
  const ctx = contextFor('scheduler')
  for (const [what, work] of [
    ['limits', watchGauges],
    ['roll-ups', addUpReadings],
  ] as const)
    try {
      await work(ctx)
    } catch (error) {
      log.warn({ err: error, what }, 'readings could not be looked at; the next tick tries again')
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
  const ctx: Context = { database, actor: { kind: 'system', job: 'sweep' }, now: now() }
  await makeRoomForReadings(ctx)
  const forgotten = await forgetOldAnswers(ctx)
  if (forgotten > 0) log.info({ forgotten }, 'answers older than 30 days forgotten')
  const tries = await forgetOldSignInTries(ctx)
  if (tries > 0) log.info({ tries }, 'tries to sign in older than 90 days forgotten')
  const ended = await forgetWhatHasEnded(ctx)
  if (ended > 0) log.info({ ended }, 'ended sessions, one-time tokens and counts of tries forgotten')
}
