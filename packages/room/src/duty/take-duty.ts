import { localDate } from '@fryward/husbandry'
import type { Duty, Id, PlainDate, TakeDuty } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import type { Context } from '../context.ts'
import { notFound, RoomError } from '../errors.ts'
import { mayAs } from '../frame/permission.ts'
import { personOf } from '../frame/person-of.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { dutyOf } from './duty-of.ts'

/**
 * Says who has the room on a day. Anybody who signs off may take it, from whoever has it too, or give their own day
 * back; naming somebody else is for those who manage the room. The past stays as it was.
 */
export async function takeDuty({
  ctx,
  roomId,
  date,
  input,
}: {
  ctx: Context
  roomId: Id
  date: PlainDate
  input: TakeDuty
}): Promise<Duty> {
  return writeInRoom({ ctx, roomId, permission: 'sign_off', changesDay: false }, async (work) => {
    const room = await work.tx.room.findUniqueOrThrow({ where: { id: roomId }, select: { timeZone: true } })
    const today = localDate({ timeZone: room.timeZone, at: ctx.now })
    if (date < today) throw new RoomError('wrong_state', `${date} is over; who had the room then stays as it was said.`)
    const before = await dutyOf(work.tx, { roomId, date })
    const concerned = input.userId ?? before?.userId ?? null
    if (concerned !== null && concerned !== personOf(ctx.actor)) assertManages(work)
    await writeDuty(work, { date, userId: input.userId })
    work.audit({ action: 'duty.take', detail: { date, userId: input.userId, before: before?.userId ?? null } })
    return { date, onDuty: await dutyOf(work.tx, { roomId, date }) }
  })
}

function assertManages({ role }: Work): void {
  if (!mayAs(role, 'manage'))
    throw new RoomError(
      'not_allowed',
      'You can take the room yourself and give it back; to name somebody else, ask a caretaker or an owner.',
    )
}

async function writeDuty({ tx, ctx, roomId }: Work, { date, userId }: { date: PlainDate; userId: string | null }) {
  const onDate = toDateColumn(date)
  if (userId === null) {
    await tx.duty.deleteMany({ where: { roomId, onDate } })
    return
  }
  const member = await tx.membership.findUnique({ where: { roomId_userId: { roomId, userId } } })
  if (!member) throw notFound('person')
  if (!mayAs(member.role, 'sign_off'))
    throw new RoomError('wrong_state', 'A viewer signs nothing off and cannot have the room for a day.')
  await tx.duty.upsert({
    where: { roomId_onDate: { roomId, onDate } },
    create: { roomId, onDate, userId, at: ctx.now },
    update: { userId, at: ctx.now },
  })
}
