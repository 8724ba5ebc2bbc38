import type { Alarm, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { viewAlarm } from './alarm-view.ts'

/** "I have it": who sees to an alarm. It stands until its gauge keeps to its band again. */
export async function acknowledgeAlarm({
  ctx,
  roomId,
  alarmId,
}: {
  ctx: Context
  roomId: Id
  alarmId: Id
}): Promise<Alarm> {
  return writeInRoom(
    { ctx, roomId, permission: 'sign_off', changesDay: false },
    async (work) => {
      const alarm = await viewAlarm(work, alarmId)
      if (alarm.acknowledgedAt)
        throw new RoomError('already_done', `${alarm.acknowledgedByName} has it already.`, { current: alarm })
      await work.tx.alarm.update({
        where: { roomId_id: { roomId, id: alarmId } },
        data: { acknowledgedAt: ctx.now, acknowledgedBy: personOf(ctx.actor) },
      })
      work.audit({ action: 'alarm.acknowledge', subjectId: alarm.subject.id, detail: { alarmId } })
    },
    (work) => viewAlarm(work, alarmId),
  )
}
