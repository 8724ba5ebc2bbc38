import type { Id, Message } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { nameOf, userNames } from '../people/user-names.ts'

const mostShown = 200

export async function listMessages({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Message[]> {
  return readInRoom({ ctx, roomId }, ({ tx }) => viewMessages({ tx, roomId }))
}

/** Newest first. */
export async function viewMessages(
  { tx, roomId }: { tx: Transaction; roomId: Id },
  which: Prisma.MessageWhereInput = {},
): Promise<Message[]> {
  const rows = await tx.message.findMany({
    where: { roomId, ...which },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: mostShown,
  })
  const names = await userNames(
    tx,
    rows.flatMap(({ userId }) => userId ?? []),
  )
  const phones = new Map((await tx.pushPhone.findMany({ where: { roomId } })).map(({ id, name }) => [id, name]))
  return rows.map((row) => ({
    id: row.id,
    alarmId: row.alarmId,
    occasion: row.occasion,
    ordinal: row.ordinal,
    way: row.way,
    personName: row.userId === null ? null : nameOf(names, row.userId),
    to: shown(row, phones),
    state: row.state,
    createdAt: row.createdAt.toISOString(),
    endedAt: row.endedAt?.toISOString() ?? null,
    detail: row.detail,
  }))
}

/** An address of a webhook may hold a secret of its own behind its host. */
function shown(
  { way, address }: { way: Message['way']; address: string },
  phones: ReadonlyMap<string, string>,
): string {
  if (way === 'push') return phones.get(address) ?? 'a phone that was taken off'
  return way === 'webhook' ? new URL(address).host : address
}
