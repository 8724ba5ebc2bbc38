import type { Fact, Id } from '@fryward/shared'
import { notFound } from '../errors.ts'
import { findCard } from '../frame/directory.ts'
import type { Work } from '../frame/write-in-room.ts'
import { userNames } from '../people/user-names.ts'
import { toFact } from './fact-view.ts'

export const factIncludes = { subject: { select: { kind: true } }, signOff: { select: { taskId: true } } } as const

/** As it stands in this transaction: of its thing and its task a write knows most already. */
export async function getFactInRoom(work: Pick<Work, 'tx' | 'roomId'>, id: Id): Promise<Fact> {
  const { tx, roomId } = work
  const row = await tx.fact.findUnique({ where: { roomId_id: { roomId, id } } })
  const subject = row && (await findCard(work, row.subjectId))
  if (!subject) throw notFound('fact')
  const signOff = row.signOffId === null ? null : await signOffOf(work, row.signOffId)
  const names = await userNames(
    tx,
    [row.recordedBy, row.struckBy].filter((userId) => userId !== null),
  )
  return toFact({ ...row, subject, signOff }, names)
}

const signOffOf = ({ tx, roomId }: Pick<Work, 'tx' | 'roomId'>, id: Id) =>
  tx.signOff.findUnique({ where: { roomId_id: { roomId, id } }, select: { taskId: true } })
