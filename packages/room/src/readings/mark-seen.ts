import type { Database } from '@fryward/store'
import { LRUCache } from 'lru-cache'
import type { Actor, Context } from '../context.ts'

const everyMs = 60_000
const mostDevices = 5000
const seen = new WeakMap<Database, LRUCache<string, number>>()

function seenOf(database: Database): LRUCache<string, number> {
  const known = seen.get(database) ?? new LRUCache({ max: mostDevices })
  seen.set(database, known)
  return known
}

/** Notes that something of the device came; to the minute, so that a device that posts each second costs no statement each. */
export async function markSeen(
  { database, now }: Context,
  { roomId, deviceId }: Extract<Actor, { kind: 'device' }>,
): Promise<void> {
  const nowMs = Date.parse(now)
  const known = seenOf(database)
  if (nowMs - (known.get(deviceId) ?? Number.NEGATIVE_INFINITY) < everyMs) return
  await database.prisma.device.updateMany({
    where: { roomId, id: deviceId, OR: [{ lastSeenAt: null }, { lastSeenAt: { lt: new Date(nowMs - everyMs) } }] },
    data: { lastSeenAt: now },
  })
  known.set(deviceId, nowMs)
}
