import type { ChangeClutchSchema, Clutch, Id } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { insertFact } from '../facts/insert-fact.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getClutchInRoom } from './clutch-view.ts'

/** Names a clutch, or says what is meant with it: raise all, part, or leave it with its parents. */
export async function changeClutch({
  ctx,
  roomId,
  clutchId,
  input,
}: {
  ctx: Context
  roomId: Id
  clutchId: Id
  input: z.infer<typeof ChangeClutchSchema>
}): Promise<Clutch> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getClutchInRoom(work, clutchId)
      assertFresh(before, input.version, before.name)
      const { name, intent } = input
      const isDecision = intent !== undefined && intent !== before.intent
      if (isDecision)
        await insertFact(work, { fact: { kind: 'decision', subjectId: clutchId, data: { intent } }, at: ctx.now })
      if (!isDecision || name !== undefined) {
        await changeSubject(work, { id: clutchId, name })
        work.audit({
          action: 'clutch.change',
          subjectId: clutchId,
          detail: definedFields({ name }),
          why: `${before.name} was changed`,
        })
      }
    },
    (work) => getClutchInRoom(work, clutchId),
  )
}
