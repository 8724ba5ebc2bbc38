import type { Fact, Id } from '@fryward/shared'
import { notFound } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'
import { userNames } from '../people/user-names.ts'
import { toFact } from './fact-view.ts'

export const factIncludes = { subject: { select: { kind: true } }, signOff: { select: { taskId: true } } } as const

export async function getFactInRoom(work: Pick<Work, 'tx' | 'roomId'>, id: Id): Promise<Fact> {
  const row = await work.tx.fact.findUnique({
    where: { roomId_id: { roomId: work.roomId, id } },
    include: factIncludes,
  })
  if (!row) throw notFound('fact')
  const names = await userNames(
    work.tx,
    [row.recordedBy, row.struckBy].filter((userId) => userId !== null),
  )
  return toFact(row, names)
}
