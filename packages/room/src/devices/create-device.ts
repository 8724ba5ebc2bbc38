import type { CreatedDevice, Id, NewDevice } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { personOf } from '../frame/person-of.ts'
import { hashToken } from '../frame/secrets.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertDeviceName } from './device-name.ts'
import { viewDevice } from './device-view.ts'

/**
 * Lets a device in. Its token is in the answer only; the server keeps the hash, and what it keeps for a repeat is without
 * the token. So that a repeat gets the same one, whoever calls makes the token of the repeat key.
 */
export async function createDevice({
  ctx,
  roomId,
  input,
  token,
}: {
  ctx: Context
  roomId: Id
  input: NewDevice
  token: string
}): Promise<CreatedDevice> {
  const device = await writeInRoom({ ctx, roomId, permission: 'own', changesDay: false }, async (work) => {
    await assertDeviceName(work, input.name)
    const id = uuidv7()
    await work.tx.device.create({
      data: {
        ...{ roomId, id, name: input.name, tokenHash: hashToken(token) },
        ...{ createdBy: personOf(ctx.actor), createdAt: ctx.now },
      },
    })
    work.audit({ action: 'device.create', detail: { deviceId: id, name: input.name } })
    return viewDevice(work, id)
  })
  return { device, token }
}
