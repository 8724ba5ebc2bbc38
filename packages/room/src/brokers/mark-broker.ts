import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'

/** Notes that this server is connected, or what stands in the way. No event of the room: pages ask again. */
export async function markBroker(
  { database: { prisma }, now }: Context,
  roomId: Id,
  state: { isConnected: boolean; trouble?: string },
): Promise<void> {
  await prisma.broker.updateMany({
    where: { roomId },
    data: {
      isConnected: state.isConnected,
      ...(state.isConnected ? { lastConnectedAt: now } : {}),
      ...(state.trouble === undefined ? {} : { trouble: state.trouble, troubleAt: now }),
    },
  })
}
