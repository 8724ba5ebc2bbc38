import { type Post, readMessage, UnreadablePost } from '@fryward/readings'
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
  roomId,
  message,
}: {
  ctx: Context
  roomId: Id
  message: Message
}): Promise<void> {
  const sender = await senderOf(ctx, roomId, message.topic)
  if (!sender) return
  const { device, gauge } = sender
  const refusals: Refusal[] = []
  const post = read({ message, gauge, nowMs: Date.parse(ctx.now), refuse: (refusal) => refusals.push(refusal) })
  if (post) refusals.push(...(await keepPost(ctx, device, post)).refused)
  if (refusals.length > 0) await noteRefusals(ctx, { roomId, topic: message.topic, refusals })
}

function read({
  message: { payload, isLate },
  gauge,
  nowMs,
  refuse,
}: {
  message: Message
  gauge: string | undefined
  nowMs: number
  refuse: (refusal: Refusal) => void
}): Post | null {
  try {
    if (payload.length > mostPostBytes) throw new UnreadablePost('The message is larger than 4 MB; send it in parts.')
    return readMessage({ text: payload.toString('utf8'), nowMs, isLate, ...(gauge === undefined ? {} : { gauge }) })
  } catch (error) {
    if (!(error instanceof UnreadablePost)) throw error
    refuse({ reason: 'unreadable', detail: error.message })
    return null
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
