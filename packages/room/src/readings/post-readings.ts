import { type Keeper, UnreadablePost } from '@fryward/readings'
import type { PostedReadings } from '@fryward/shared'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { keepPost } from './keep-post.ts'

const mostNamed = 100

/**
 * Keeps what a device posts. Takes no room lock and plans nothing; the answer comes after the commit. Each reading that
 * cannot be kept is named, and the others are kept.
 */
export async function postReadings({
  ctx,
  keeper,
  type,
  bytes,
}: {
  ctx: Context
  keeper: Keeper
  type: string
  bytes: Uint8Array
}): Promise<PostedReadings> {
  const { actor: device } = ctx
  if (device.kind !== 'device') throw new RoomError('not_allowed', 'Readings are posted by a device with its token.')
  const { kept, refused } = await keepPost({ ctx, keeper, device }, { type, bytes }).catch(inOurWords)
  return { kept, refusedNumber: refused.length, refusals: refused.slice(0, mostNamed) }
}

function inOurWords(error: unknown): never {
  if (error instanceof UnreadablePost) throw new RoomError('invalid_input', error.message)
  throw error
}
