import type { Absence, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'

const mostShown = 20

/** When this server was off, newest first. */
export async function listAbsences({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Absence[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const rows = await tx.absence.findMany({ orderBy: { fromAt: 'desc' }, take: mostShown })
    return rows.map(({ fromAt, toAt }) => ({ from: fromAt.toISOString(), to: toAt.toISOString() }))
  })
}

/** Since when this server has been awake, milliseconds since 1970; null where it never was off. */
export async function awakeSince({ database }: Context): Promise<number | null> {
  const last = await database.prisma.absence.findFirst({ orderBy: { toAt: 'desc' } })
  return last?.toAt.getTime() ?? null
}
