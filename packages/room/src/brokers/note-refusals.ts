import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { refusalsKeptMs } from './broker-view.ts'

export type Refusal = { reason: string; detail: string }

// Whoever publishes to ever new topics does not fill the disk.
const mostRows = 200
const longestTopic = 200

/** Notes what was not kept of a message: the newest of each topic and reason, and how often that came. */
export async function noteRefusals(
  { database, now }: Context,
  { roomId, topic, refusals }: { roomId: Id; topic: string; refusals: readonly Refusal[] },
): Promise<void> {
  const said = topic.replaceAll(/\p{C}|\uFFFD/gu, '?').slice(0, longestTopic)
  for (const reason of new Set(refusals.map((refusal) => refusal.reason))) {
    const some = refusals.filter((refusal) => refusal.reason === reason)
    const newest = { detail: some.at(-1)?.detail ?? '', lastAt: now }
    await database.prisma.brokerRefusal.upsert({
      where: { roomId_topic_reason: { roomId, topic: said, reason } },
      create: { ...{ roomId, topic: said, reason }, ...newest, number: some.length },
      update: { ...newest, number: { increment: some.length } },
    })
  }
  await database.pool.query(
    `DELETE FROM broker_refusal WHERE room_id = $1 AND (last_at < $2 OR (topic, reason) IN (
       SELECT topic, reason FROM broker_refusal WHERE room_id = $1 ORDER BY last_at DESC, topic OFFSET $3))`,
    [roomId, new Date(Date.parse(now) - refusalsKeptMs), mostRows],
  )
}
