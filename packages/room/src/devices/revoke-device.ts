import type { Device, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { forgetGauges } from '../readings/known-gauges.ts'
import { viewDevice } from './device-view.ts'

export async function revokeDevice({
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
      if (device.revokedAt) throw new RoomError('wrong_state', `${device.name} was taken out already.`)
      await work.tx.device.update({
        where: { roomId_id: { roomId, id: deviceId } },
        data: { revokedAt: ctx.now, version: { increment: 1 } },
      })
      // What is known to be out is no trouble any more.
      await work.tx.alarm.updateMany({
        where: { roomId, clearedAt: null, gauge: { deviceId } },
        data: { clearedAt: ctx.now },
      })
      work.audit({ action: 'device.revoke', detail: { deviceId, name: device.name } })
    },
    (work) => viewDevice(work, deviceId),
  ).finally(() => forgetGauges(ctx.database))
}
