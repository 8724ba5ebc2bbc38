import type { Id } from '@fryward/shared'
import { invalid } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'

/** One topic, one device: or nobody could say whose reading a message is. */
export async function assertTopic({ tx, roomId }: Work, topic: string, deviceId: Id): Promise<void> {
  const taken = await tx.device.findFirst({ where: { roomId, revokedAt: null, topic, id: { not: deviceId } } })
  if (taken) throw invalid('topic', `${taken.name} publishes to "${topic}" already; choose another.`, topic)
}
