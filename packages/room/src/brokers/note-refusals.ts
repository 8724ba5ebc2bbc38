import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { refusalsKeptMs } from './broker-view.ts'

export type Refusal = { reason: string; detail: string }

// Whoever publishes to ever new topics does not fill the disk.
const mostRows = 200
const longestTopic = 200

// Messages are taken beside one another: an older one that is noted second leaves the newer one's words.
const noting = `
  INSERT INTO broker_refusal AS known (room_id, topic, reason, detail, number, last_at) VALUES ($1, $2, $3, $4, $5, $6)
  ON CONFLICT (room_id, topic, reason) DO UPDATE SET number = known.number + excluded.number,
    detail = CASE WHEN excluded.last_at < known.last_at THEN known.detail ELSE excluded.detail END,
    last_at = greatest(known.last_at, excluded.last_at)`

/** Notes what was not kept of a message: the newest of each topic and reason, and how often that came. */
export async function noteRefusals(
  { database, now }: Context,
  { roomId, topic, refusals }: { roomId: Id; topic: string; refusals: readonly Refusal[] },
): Promise<void> {
  const said = topic.replaceAll(/\p{C}|\uFFFD/gu, '?').slice(0, longestTopic)
  for (const reason of new Set(refusals.map((refusal) => refusal.reason))) {
    const some = refusals.filter((refusal) => refusal.reason === reason)
    await database.pool.query(noting, [roomId, said, reason, some.at(-1)?.detail ?? '', some.length, now])
  }
  await database.pool.query(
    `DELETE FROM broker_refusal WHERE room_id = $1 AND (last_at < $2 OR (topic, reason) IN (
       SELECT topic, reason FROM broker_refusal WHERE room_id = $1 ORDER BY last_at DESC, topic OFFSET $3))`,
    [roomId, new Date(Date.parse(now) - refusalsKeptMs), mostRows],
  )
}
