import type { Id } from '@fryward/shared'
import { invalid } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'

/** Two devices of one name could not be told apart on their page. */
export async function assertDeviceName({ tx, roomId }: Work, name: string, exceptId?: Id): Promise<void> {
  const taken = await tx.device.findFirst({
    where: { roomId, revokedAt: null, name: { equals: name, mode: 'insensitive' }, id: { not: exceptId } },
  })
  if (taken) throw invalid('name', `"${name}" is the name of a device here already; choose another.`, name)
}
