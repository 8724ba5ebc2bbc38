import type { Alarm, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { mayAs } from '../frame/permission.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { standingAlarm, viewAlarm } from './alarm-view.ts'

/** Hands an alarm to somebody of the room: they are told at once, and again until they have it. */
export async function handAlarm({
  ctx,
  roomId,
  alarmId,
  userId,
}: {
  ctx: Context
  roomId: Id
  alarmId: Id
  userId: string
}): Promise<Alarm> {
  return writeInRoom(
    { ctx, roomId, permission: 'sign_off', changesDay: false },
    async (work) => {
      const alarm = await standingAlarm(work, alarmId)
      const member = await work.tx.membership.findUnique({ where: { roomId_userId: { roomId, userId } } })
      if (!member) throw notFound('person')
      if (!mayAs(member.role, 'sign_off'))
        throw new RoomError('wrong_state', 'A viewer sees to nothing here. Hand it to somebody who signs off.')
      await work.tx.alarm.update({
        where: { roomId_id: { roomId, id: alarmId } },
        data: { handedTo: userId, acknowledgedAt: null, acknowledgedBy: null, quietUntil: null },
      })
      work.audit({ action: 'alarm.hand', subjectId: alarm.subject.id, detail: { alarmId, userId } })
    },
    (work) => viewAlarm(work, alarmId),
  )
}
