import type { ChangePairSchema, Id, Pair } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { changeSubject } from '../frame/subject-row.ts'
import { assertFresh, definedFields } from '../frame/versioned.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { assertTank } from './create-pair.ts'
import { type Descent, keepDescent } from './descent.ts'
import { getKeptPair, getPairInRoom } from './pair-view.ts'

/** What was said of a pair's fish before; with another date of theirs it is looked at again. */
const descentOf = ({
  femaleFromClutchId,
  maleFromClutchId,
}: Pick<Pair, 'femaleFromClutchId' | 'maleFromClutchId'>): Descent => ({
  femaleFromClutchId,
  maleFromClutchId,
})

export async function changePair({
  ctx,
  roomId,
  pairId,
  input,
}: {
  ctx: Context
  roomId: Id
  pairId: Id
  input: z.infer<typeof ChangePairSchema>
}): Promise<Pair> {
  return writeInRoom(
    { ctx, roomId, permission: 'manage' },
    async (work) => {
      const before = await getKeptPair(work, pairId)
      assertFresh(before, input.version, before.name)
      const { name, note, formedOn, version: _version, ...said } = input
      const { femaleFromClutchId, maleFromClutchId, femaleSameAs, maleSameAs, ...fields } = said
      const descent = { femaleFromClutchId, maleFromClutchId, femaleSameAs, maleSameAs }
      if (fields.tankId !== undefined) await assertTank(work, fields.tankId)
      await changeSubject(work, { id: pairId, name, note })
      await work.tx.pair.update({
        where: { roomId_id: { roomId, id: pairId } },
        data: {
          ...definedFields(fields),
          formedOn: formedOn ? toDateColumn(formedOn) : formedOn === null ? null : undefined,
        },
      })
      await keepDescent(work, {
        pairId,
        descent: formedOn ? { ...descentOf(before), ...definedFields(descent) } : descent,
      })
      work.audit({
        action: 'pair.change',
        subjectId: pairId,
        detail: definedFields({ name, note, formedOn, ...fields, ...descent }),
        why: `${before.name} was changed`,
      })
    },
    (work) => getPairInRoom(work, pairId),
  )
}
