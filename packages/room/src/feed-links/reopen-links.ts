import { type Id, IdSchema, PlainDateSchema, type SubjectKind } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import { z } from 'zod'
import type { Work } from '../frame/write-in-room.ts'

const EndedLinksSchema = z.object({
  untilOn: PlainDateSchema,
  ended: z.array(IdSchema),
  toCome: z.array(z.object({ id: IdSchema, batchId: IdSchema, cultureId: IdSchema, fromOn: PlainDateSchema })),
})
/** Feed links that went with the end of a culture or a batch. */
export type EndedLinks = z.infer<typeof EndedLinksSchema>

/** What the end of a thing took from its feed links, where both their ends live and nobody has changed them since. */
export async function reopenLinks(work: Work, thing: { id: Id; kind: SubjectKind }): Promise<void> {
  const links = await linksOfLastEnd(work, thing)
  if (!links) return
  const { tx, roomId } = work
  const living = { subject: { endedAt: null } }
  const found = await tx.feedLink.findMany({
    where: { roomId, id: { in: links.ended }, untilOn: toDateColumn(links.untilOn), batch: living, culture: living },
  })
  for (const { id, batchId, cultureId } of found)
    if (await isFree(work, { batchId, cultureId }))
      await tx.feedLink.update({
        where: { roomId_id: { roomId, id } },
        data: { untilOn: null, version: { increment: 1 } },
      })
  for (const link of links.toCome) {
    const { batchId, cultureId } = link
    const others = await tx.subject.count({ where: { roomId, id: { in: [batchId, cultureId] }, endedAt: null } })
    if (others === 2 && (await isFree(work, { batchId, cultureId })))
      await tx.feedLink.create({ data: { ...link, roomId, fromOn: toDateColumn(link.fromOn) } })
  }
}

const isFree = async ({ tx, roomId }: Work, ends: { batchId: Id; cultureId: Id }): Promise<boolean> =>
  (await tx.feedLink.count({ where: { roomId, ...ends, untilOn: null } })) === 0

async function linksOfLastEnd({ tx, roomId }: Work, { id, kind }: { id: Id; kind: SubjectKind }) {
  const end = await tx.auditEntry.findFirst({
    where: { roomId, subjectId: id, action: `${kind}.end` },
    orderBy: [{ revision: 'desc' }, { ordinal: 'desc' }],
  })
  return z.object({ links: EndedLinksSchema }).safeParse(end?.detail).data?.links
}
