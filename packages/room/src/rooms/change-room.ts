import type { ChangeRoom, Id, Room } from '@fryward/shared'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { personOf } from '../frame/person-of.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { getRoomRow } from './room-view.ts'

export async function changeRoom({
  ctx,
  roomId,
  input,
}: {
  ctx: Context
  roomId: Id
  input: ChangeRoom
}): Promise<Room> {
  return writeInRoom(
    { ctx, roomId, permission: 'own' },
    async (work) => {
      assertFresh(await getRoomRow(work), input.version, 'The room')
      const { version: _version, ...fields } = input
      if (fields.asksSecondFactor) await assertHasSecondFactor(work)
      await work.tx.room.update({
        where: { id: roomId },
        data: { ...definedFields(fields), version: { increment: 1 } },
      })
      if (fields.name !== undefined) await changeSubject(work, { id: roomId, name: fields.name })
      work.audit({
        action: 'room.change',
        subjectId: roomId,
        detail: definedFields(fields),
        why: 'the room was changed',
      })
    },
    (work) => getRoomRow(work),
  )
}

/** Whoever asks it of others would otherwise shut themselves out with the same tap. */
async function assertHasSecondFactor({ tx, ctx }: Work): Promise<void> {
  const user = await tx.user.findUnique({ where: { id: personOf(ctx.actor) }, select: { twoFactorEnabled: true } })
  if (!user?.twoFactorEnabled)
    throw invalid('asksSecondFactor', 'Set up a second factor for yourself first, under More, Your account.')
}
