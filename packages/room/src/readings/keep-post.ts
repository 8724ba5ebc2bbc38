import {
  createInbox,
  type Inbox,
  InboxFull,
  inKeptUnit,
  type KeptReading,
  type Post,
  type PostedReading,
  quantities,
} from '@fryward/readings'
import type { RefusedReading } from '@fryward/shared'
import type { Database } from '@fryward/store'
import type { Actor, Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { type KnownGauge, knownGauges } from './known-gauges.ts'
import { markSeen } from './mark-seen.ts'

const inboxes = new WeakMap<Database, Inbox>()

/** One inbox a process: posts of all devices share its commits. */
function inboxOf(database: Database): Inbox {
  const inbox = inboxes.get(database) ?? createInbox(database.pool)
  inboxes.set(database, inbox)
  return inbox
}

/**
 * Keeps what a post of a device says; resolves after the commit.
 * @returns how many were kept, and every one that was not, in the order of the post.
 */
export async function keepPost(
  ctx: Context,
  device: Extract<Actor, { kind: 'device' }>,
  post: Post,
): Promise<{ kept: number; refused: RefusedReading[] }> {
  const gauges = await knownGauges(ctx.database, device)
  const kept: KeptReading[] = []
  const refused = [...post.refused]
  for (const reading of post.readings) {
    const judged = judge(reading, gauges.get(reading.gauge))
    if ('reason' in judged) refused.push(judged)
    else kept.push(judged)
  }
  await keep(ctx.database, kept)
  await noteNonsense(ctx, refused, gauges)
  await markSeen(ctx, device)
  refused.sort((one, other) => one.index - other.index)
  return { kept: kept.length, refused }
}

async function keep(database: Database, readings: KeptReading[]): Promise<void> {
  try {
    await inboxOf(database).keep(readings)
  } catch (error) {
    if (error instanceof InboxFull)
      throw new RoomError('busy', 'More readings come in than can be written. Nothing of this was kept; send it again.')
    throw error
  }
}

/** A gauge that sends nothing but nonsense is not silent: that it is not to be believed is said of it. */
async function noteNonsense(
  { database, now }: Context,
  refused: readonly RefusedReading[],
  gauges: ReadonlyMap<string, KnownGauge>,
): Promise<void> {
  const channels = refused.flatMap(({ reason, gauge }) =>
    reason === 'beyond_sense' ? (gauges.get(gauge ?? '')?.channel ?? []) : [],
  )
  if (channels.length === 0) return
  await database.prisma.gauge.updateMany({
    where: { channel: { in: [...new Set(channels)] } },
    data: { implausibleAt: now },
  })
}

function judge(
  { index, gauge, at, value, unit }: PostedReading,
  known: KnownGauge | undefined,
): KeptReading | RefusedReading {
  const refuse = (reason: RefusedReading['reason'], detail: string) => ({ index, gauge, reason, detail })
  if (!known) return refuse('unknown_gauge', 'This device has no gauge of that name. Add it on its page first.')
  const inUnit = inKeptUnit(known.quantity, value, unit)
  if (inUnit === null) {
    const units = Object.keys(quantities[known.quantity].from).join(', ')
    return refuse('wrong_unit', `A gauge of ${known.quantity} reads in one of: ${units}.`)
  }
  const { lowest, highest } = quantities[known.quantity]
  if (inUnit < lowest || inUnit > highest)
    return refuse('beyond_sense', `No ${known.quantity} is outside ${lowest} to ${highest}. Look at the probe.`)
  return { channel: known.channel, at, value: inUnit + known.offset }
}
