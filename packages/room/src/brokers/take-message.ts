import { type Keeper, UnreadablePost } from '@fryward/readings'
import { type Id, mostPostBytes } from '@fryward/shared'
import type { Actor, Context } from '../context.ts'
import { keepPost } from '../readings/keep-post.ts'
import { noteRefusals, type Refusal } from './note-refusals.ts'

// A topic has 120 letters at most.
const mostLevels = 60

type Device = Extract<Actor, { kind: 'device' }>
type Message = {
  topic: string
  payload: Buffer
  /** It waited at the broker, and nobody knows how long. */
  isLate: boolean
}

/**
 * Keeps what a message of a room's broker says, as the device whose topic it came by; resolves after the commit. What is
 * refused is noted with its reason. A topic that is no device's is nobody's, and passed over.
 */
export async function takeMessage({
  ctx,
  keeper,
  roomId,
  message,
}: {
  ctx: Context
  keeper: Keeper
  roomId: Id
  message: Message
}): Promise<void> {
  const { topic, payload, isLate } = message
  const sender = await senderOf(ctx, roomId, topic)
  if (!sender) return
  const { device, gauge } = sender
  const sent = { bytes: payload, type: null, isLate, ...(gauge === undefined ? {} : { gauge }) }
  const refusals = await refusalsOf(async () => {
    if (payload.length > mostPostBytes) throw new UnreadablePost('The message is larger than 4 MB; send it in parts.')
    return (await keepPost({ ctx, keeper, device }, sent)).refused
  })
  if (refusals.length > 0) await noteRefusals(ctx, { roomId, topic, refusals })
}

async function refusalsOf(keep: () => Promise<Refusal[]>): Promise<Refusal[]> {
  try {
    return await keep()
  } catch (error) {
    if (!(error instanceof UnreadablePost)) throw error
    return [{ reason: 'unreadable', detail: error.message }]
  }
}

/** Whose topic it is; of one below another the nearer. Below a device's topic stands what it calls the gauge. */
async function senderOf(
  { database }: Context,
  roomId: Id,
  topic: string,
): Promise<{ device: Device; gauge: string | undefined } | null> {
  // No device's topic has it, and PostgreSQL takes none.
  if (topic.includes('\0')) return null
  const levels = topic.split('/').slice(0, mostLevels)
  const above = levels.map((_, index) => levels.slice(0, index + 1).join('/'))
  const rows = await database.prisma.device.findMany({ where: { roomId, revokedAt: null, topic: { in: above } } })
  const [row] = rows.toSorted((one, other) => (other.topic?.length ?? 0) - (one.topic?.length ?? 0))
  if (!row?.topic) return null
  const device: Device = { kind: 'device', roomId, deviceId: row.id, name: row.name }
  return { device, gauge: topic === row.topic ? undefined : topic.slice(row.topic.length + 1) }
}
