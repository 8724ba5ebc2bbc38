import type { Device, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { viewDevice } from '../devices/device-view.ts'
import { RoomError } from '../errors.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { forgetGauges } from '../readings/known-gauges.ts'
import { assertWithinADay } from './within-a-day.ts'

/** Lets a device that was taken out in again: the token that it has opens as before. */
export async function restoreDevice({
  ctx,
  roomId,
  deviceId,
}: {
  ctx: Context
  roomId: Id
  deviceId: Id
}): Promise<Device> {
  return writeInRoom(
    { ctx, roomId, permission: 'own', changesDay: false },
    async (work) => {
      const device = await viewDevice(work, deviceId)
      if (!device.revokedAt)
        throw new RoomError('wrong_state', `${device.name} is let in; there is nothing to put back.`)
      assertWithinADay(ctx, new Date(device.revokedAt), 'let it in as a new device, with a new token')
      await work.tx.device.update({
        where: { roomId_id: { roomId, id: deviceId } },
        data: { revokedAt: null, ...(await topicLeft(work, device)), version: { increment: 1 } },
      })
      work.audit({ action: 'device.restore', detail: { deviceId, name: device.name } })
    },
    (work) => viewDevice(work, deviceId),
  ).finally(() => forgetGauges(ctx.database))
}

/** Its topic is another device's where one took it meanwhile. */
async function topicLeft({ tx, roomId }: Work, { topic }: Device): Promise<{ topic: null } | undefined> {
  const taken = topic && (await tx.device.findFirst({ where: { roomId, revokedAt: null, topic } }))
  return taken ? { topic: null } : undefined
}
