import type { ChangeDevice, Device, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertDeviceName } from './device-name.ts'
import { assertTopic } from './device-topic.ts'
import { viewDevice } from './device-view.ts'

export async function changeDevice({
  ctx,
  roomId,
  deviceId,
  input: { version, ...fields },
}: {
  ctx: Context
  roomId: Id
  deviceId: Id
  input: ChangeDevice
}): Promise<Device> {
  return writeInRoom(
    { ctx, roomId, permission: 'own', changesDay: false },
    async (work) => {
      const before = await viewDevice(work, deviceId)
      assertFresh(before, version, before.name)
      if (before.revokedAt) throw new RoomError('wrong_state', `${before.name} was taken out; let a new device in.`)
      if (fields.name !== undefined) await assertDeviceName(work, fields.name, deviceId)
      if (typeof fields.topic === 'string') await assertTopic(work, fields.topic, deviceId)
      await work.tx.device.update({
        where: { roomId_id: { roomId, id: deviceId } },
        data: { ...definedFields(fields), version: { increment: 1 } },
      })
      work.audit({ action: 'device.change', detail: { deviceId, ...definedFields(fields) } })
    },
    (work) => viewDevice(work, deviceId),
  )
}
