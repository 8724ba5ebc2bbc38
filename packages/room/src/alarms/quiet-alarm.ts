import type { Alarm, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { standingAlarm, viewAlarm } from './alarm-view.ts'

/** Tells nobody again for a while, and then again where nobody has it by then. */
export async function quietAlarm({
  ctx,
  roomId,
  alarmId,
  minutes,
}: {
  ctx: Context
  roomId: Id
  alarmId: Id
  minutes: number
}): Promise<Alarm> {
  return writeInRoom(
    { ctx, roomId, permission: 'sign_off', changesDay: false },
    async (work) => {
      const alarm = await standingAlarm(work, alarmId)
      await work.tx.alarm.update({
        where: { roomId_id: { roomId, id: alarmId } },
        data: { quietUntil: new Date(Date.parse(ctx.now) + minutes * 60_000) },
      })
      work.audit({ action: 'alarm.quiet', subjectId: alarm.subject.id, detail: { alarmId, minutes } })
    },
    (work) => viewAlarm(work, alarmId),
  )
}
