import {
  addUpReadings,
  type Context,
  dropOldReadings,
  forgetOldAnswers,
  forgetOldMessages,
  forgetOldSignInTries,
  forgetWhatHasEnded,
  listRoomIds,
  makeRoomForReadings,
  noteTick,
  noteWater,
  openDays,
  watchGauges,
} from '@fryward/room'
import type { Database } from '@fryward/store'
import type { HandOver } from './hand-over.ts'
import { sendMessages } from './send-messages.ts'
import type { TickLog } from './tick-log.ts'

/**
 * One tick: every room's lists are opened and closed as the tables say. A room that fails does not hold up the others.
 * @returns rooms in which something was written.
 */
export async function tick({
  database,
  now,
  log,
  sending,
}: {
  database: Database
  now: () => string
  log: TickLog
  /** How alarms are sent; without it they stand on the pages alone. */
  sending?: { handOver: HandOver; isMailSetUp: boolean } | undefined
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
  const ctx = () => contextFor('scheduler')
  const absence = await noteTick(ctx())
  if (absence) log.info(absence, 'nothing was looked at for a while; what happened in that time is not known')
  const steps: [what: string, work: () => Promise<unknown>][] = [
    ['roll-ups', () => addUpReadings(ctx())],
    ['limits', () => watchGauges(ctx())],
    ['records', () => noteWater(ctx())],
    ['messages', async () => sending && sendMessages({ ctx, log, ...sending })],
  ]
  for (const [what, work] of steps)
    try {
      await work()
    } catch (error) {
      log.warn({ err: error, what }, 'a step of this tick failed; the next one tries again')
    }
  return written
}

export async function sweep({
  database,
  now,
  log,
  keepMonths = 0,
}: {
  database: Database
  now: () => string
  log: TickLog
  /** Months that single readings are kept; 0 for good. */
  keepMonths?: number
}): Promise<void> {
  const ctx: Context = { database, actor: { kind: 'system', job: 'sweep' }, now: now() }
  await makeRoomForReadings(ctx)
  const dropped = keepMonths > 0 ? await dropOldReadings(ctx, keepMonths) : []
  if (dropped.length > 0) log.info({ dropped }, 'months of single readings dropped; their hours stay')
  const forgotten = await forgetOldAnswers(ctx)
  if (forgotten > 0) log.info({ forgotten }, 'answers older than 30 days forgotten')
  const tries = await forgetOldSignInTries(ctx)
  if (tries > 0) log.info({ tries }, 'tries to sign in older than 90 days forgotten')
  const messages = await forgetOldMessages(ctx)
  if (messages > 0) log.info({ messages }, 'messages older than 90 days forgotten')
  const ended = await forgetWhatHasEnded(ctx)
  if (ended > 0) log.info({ ended }, 'ended sessions, one-time tokens and counts of tries forgotten')
}
