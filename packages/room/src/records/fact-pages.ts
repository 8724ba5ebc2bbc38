import type { FactKind, Id } from '@fryward/shared'
import type { Database, Prisma } from '@fryward/store'

const rowsAtOnce = 1000

const including = { subject: { select: { name: true, kind: true } } } as const
export type FactOfFile = Prisma.FactGetPayload<{ include: typeof including }>

type Asked = { roomId: Id; kind: FactKind; from: string; before: string; revision: number }

/**
 * Standing facts of one kind between two instants, as of one revision of the room, oldest first and a page at a time: a
 * file of years is never in memory, and what is written meanwhile is not in it.
 */
export async function* factPages(database: Database, asked: Asked): AsyncGenerator<FactOfFile[]> {
  const { roomId, kind, from, before, revision } = asked
  let last: { at: Date; id: Id } | undefined
  while (true) {
    const page = await database.prisma.fact.findMany({
      where: {
        ...{ roomId, kind, at: { gte: from, lt: before }, revision: { lte: revision } },
        AND: [
          { OR: [{ struckAt: null }, { struckRevision: { gt: revision } }] },
          last === undefined ? {} : { OR: [{ at: { gt: last.at } }, { at: last.at, id: { gt: last.id } }] },
        ],
      },
      include: including,
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
      take: rowsAtOnce,
    })
    if (page.length > 0) yield page
    if (page.length < rowsAtOnce) return
    last = page.at(-1)
  }
}
