import type { ChangeCultureSchema, Culture, Id } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertLinks } from './create-culture.ts'
import { getCultureInRoom } from './culture-view.ts'

export async function changeCulture({
  ctx,
  roomId,
  cultureId,
  input,
}: {
  ctx: Context
  roomId: Id
  cultureId: Id
  input: z.infer<typeof ChangeCultureSchema>
}): Promise<Culture> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getCultureInRoom(work, cultureId)
      assertFresh(before, input.version, before.name)
      const { name, note, version: _version, ...fields } = input
      if (before.kind === 'rotifer' && fields.strain === null)
        throw invalid('strain', 'A rotifer culture keeps a strain: L, S or SS.')
      await assertLinks(work, fields)
      await changeSubject(work, { id: cultureId, name, note })
      await work.tx.culture.update({ where: { roomId_id: { roomId, id: cultureId } }, data: definedFields(fields) })
      work.audit({
        action: 'culture.change',
        subjectId: cultureId,
        detail: definedFields({ name, note, ...fields }),
        why: `${before.name} was changed`,
      })
    },
    (work) => getCultureInRoom(work, cultureId),
  )
}
