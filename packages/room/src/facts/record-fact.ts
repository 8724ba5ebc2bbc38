import type { Fact, Id, NewFact } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { getFactInRoom } from './get-fact.ts'
import { insertFact } from './insert-fact.ts'

/** Records a fact without a task, and works the lists out again. */
export async function recordFact({ ctx, roomId, input }: { ctx: Context; roomId: Id; input: NewFact }): Promise<Fact> {
  return writeInRoom(
    { ctx, roomId, permission: 'record' },
    async (work) => {
      const id = await insertFact(work, { fact: input, at: input.at ?? ctx.now })
      work.audit({
        action: 'fact.record',
        subjectId: input.subjectId,
        detail: { factId: id, kind: input.kind },
        why: `a ${input.kind.replaceAll('_', ' ')} was recorded`,
      })
      return id
    },
    getFactInRoom,
  )
}
