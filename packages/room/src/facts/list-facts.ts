import type { FactPageSchema, FactQuerySchema, Id } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { userNames } from '../people/user-names.ts'
import { toFact } from './fact-view.ts'
import { factIncludes } from './get-fact.ts'

/**
 * What happened, newest first, struck-out facts included; `before` pages on. A page never ends between facts of one
 * instant (it would lose the rest of them), so it may be a little longer than asked.
 */
export async function listFacts({
  ctx,
  roomId,
  query,
}: {
  ctx: Context
  roomId: Id
  query: z.infer<typeof FactQuerySchema>
}): Promise<z.infer<typeof FactPageSchema>> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const asked = { roomId, subjectId: query.subjectId, kind: query.kind }
    const order = { include: factIncludes, orderBy: [{ at: 'desc' as const }, { id: 'desc' as const }] }
    const page = await tx.fact.findMany({
      where: { ...asked, at: query.before ? { lt: query.before } : undefined },
      ...order,
      take: query.limit,
    })
    const last = page.at(-1)
    const isFull = last !== undefined && page.length === query.limit
    const rest = isFull
      ? await tx.fact.findMany({ where: { ...asked, at: last.at, id: { lt: last.id } }, ...order })
      : []
    const rows = [...page, ...rest]
    const names = await userNames(
      tx,
      rows.flatMap((row) => [row.recordedBy, row.struckBy].filter((userId) => userId !== null)),
    )
    return {
      facts: rows.map((row) => toFact(row, names)),
      nextBefore: isFull ? last.at.toISOString() : null,
    }
  })
}
