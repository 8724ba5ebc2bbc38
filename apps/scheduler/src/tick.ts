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
  renewDays,
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
  const written = await inEachRoom(
    { database, now, log, failed: 'this room could not be worked out; the next tick tries again' },
    openDays,
  )
  const ctx = (): Context => ({ database, actor: { kind: 'system', job: 'scheduler' }, now: now() })
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

/**
 * Once at a start, after the first tick: open lists are brought to what the rules of this version say.
 * @returns rooms in which something was written.
 */
export const renew = ({ database, now, log }: { database: Database; now: () => string; log: TickLog }) =>
  inEachRoom({ database, now, log, failed: 'the lists of this room stay as they are until its next write' }, renewDays)

/** A room that fails does not hold up the others. */
async function inEachRoom(
  { database, now, log, failed }: { database: Database; now: () => string; log: TickLog; failed: string },
  work: (given: { ctx: Context; roomId: string }) => Promise<boolean>,
): Promise<string[]> {
  const ctx = (): Context => ({ database, actor: { kind: 'system', job: 'scheduler' }, now: now() })
  const written: string[] = []
  for (const roomId of await listRoomIds(ctx())) {
    try {
      if (await work({ ctx: ctx(), roomId })) written.push(roomId)
    } catch (error) {
      log.warn({ err: error, roomId }, failed)
    }
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
