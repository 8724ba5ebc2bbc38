import { InboxFull, type Keeper, KeepingEnded, type KnownGauges, type Sent } from '@fryward/readings'
import type { RefusedReading } from '@fryward/shared'
import type { Actor, Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { knownGauges } from './known-gauges.ts'
import { markSeen } from './mark-seen.ts'

/**
 * Keeps what a device sent; resolves after the commit.
 * @returns how many were kept, and every one that was not, in the order of the post.
 * @throws UnreadablePost when it is no post at all.
 */
export async function keepPost(
  { ctx, keeper, device }: { ctx: Context; keeper: Keeper; device: Extract<Actor, { kind: 'device' }> },
  sent: Omit<Sent, 'nowMs'>,
): Promise<{ kept: number; refused: RefusedReading[] }> {
  const gauges = await knownGauges(ctx.database, device)
  const fate = await keeper.keep({ ...sent, nowMs: Date.parse(ctx.now) }, gauges).catch(inOurWords)
  await noteNonsense(ctx, fate.refused, gauges)
  await markSeen(ctx, device)
  return fate
}

function inOurWords(error: unknown): never {
  if (error instanceof InboxFull)
    throw new RoomError('busy', 'More readings come in than can be written. Nothing of this was kept; send it again.')
  if (error instanceof KeepingEnded)
    throw new RoomError(
      'unavailable',
      'Something went wrong while this was kept, and nobody knows whether it was. Send it again: what carries its time is kept once.',
      { cause: error },
    )
  throw error
}

/** A gauge that sends nothing but nonsense is not silent: that it is not to be believed is said of it. */
async function noteNonsense(
  { database, now }: Context,
  refused: readonly RefusedReading[],
  gauges: KnownGauges,
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
