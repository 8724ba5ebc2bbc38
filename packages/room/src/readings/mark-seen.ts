import type { Actor, Context } from '../context.ts'

/** Notes that something of the device came; to the minute, so that a device that posts each second costs no write each. */
export async function markSeen(
  { database, now }: Context,
  { roomId, deviceId }: Extract<Actor, { kind: 'device' }>,
): Promise<void> {
  const aMinuteAgo = new Date(Date.parse(now) - 60_000)
  await database.prisma.device.updateMany({
    where: { roomId, id: deviceId, OR: [{ lastSeenAt: null }, { lastSeenAt: { lt: aMinuteAgo } }] },
    data: { lastSeenAt: now },
  })
}
