import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { unseal } from '../frame/sealed.ts'
import { sealedAs } from './change-broker.ts'

/** A broker with all that it takes to listen to it. */
export type KnownBroker = {
  roomId: Id
  url: string
  username: string | null
  password: string | null
  /** Whether there is one that was sealed with another secret of this server. */
  isPasswordLost: boolean
  authority: string | null
  /** Where the room's devices publish. */
  topics: string[]
  lastConnectedAt: string | null
}

/** Brokers of all rooms, for the one process that listens to them. */
export async function listBrokers({ database: { prisma } }: Context, secret: string): Promise<KnownBroker[]> {
  const rows = await prisma.broker.findMany({
    orderBy: { roomId: 'asc' },
    include: {
      room: {
        select: {
          brokerPassword: true,
          devices: {
            where: { revokedAt: null, topic: { not: null } },
            select: { topic: true },
            orderBy: { id: 'asc' },
          },
        },
      },
    },
  })
  return rows.map(({ roomId, url, username, authority, lastConnectedAt, room }) => {
    const password = room.brokerPassword && unseal(secret, sealedAs(roomId), room.brokerPassword.sealed)
    return {
      ...{ roomId, url, username, authority, password },
      isPasswordLost: password === null && room.brokerPassword !== null,
      topics: room.devices.flatMap(({ topic }) => topic ?? []),
      lastConnectedAt: lastConnectedAt?.toISOString() ?? null,
    }
  })
}
