import type { FactPageSchema, FactQuerySchema, Id } from '@fryward/shared'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { userNames } from '../people/user-names.ts'
import { readInRoom } from '../work/write-in-room.ts'
import { toFact } from './fact-view.ts'
import { factIncludes } from './get-fact.ts'

/** What happened, newest first, struck-out facts included; `before` pages on. */
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
    const rows = await tx.fact.findMany({
      where: {
        roomId,
        subjectId: query.subjectId,
        kind: query.kind,
        at: query.before ? { lt: query.before } : undefined,
      },
      include: factIncludes,
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: query.limit,
    })
    const names = await userNames(
      tx,
      rows.flatMap((row) => [row.recordedBy, row.struckBy].filter((userId) => userId !== null)),
    )
    return {
      facts: rows.map((row) => toFact(row, names)),
      nextBefore: rows.length === query.limit ? rows.at(-1)!.at.toISOString() : null,
    }
  })
}
