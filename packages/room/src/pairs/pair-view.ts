import type { Id, Pair } from '@fryward/shared'
import { fromDateColumn, type Prisma, type Transaction } from '@fryward/store'
import { notFound } from '../errors.ts'

export function toPair({
  subject,
  roomId: _roomId,
  formedOn,
  ...pair
}: Prisma.PairGetPayload<{ include: { subject: true } }>): Pair {
  return {
    ...pair,
    name: subject.name,
    note: subject.note,
    formedOn: formedOn ? fromDateColumn(formedOn) : null,
    endedAt: subject.endedAt?.toISOString() ?? null,
    version: subject.version,
  }
}

export async function getPairInRoom({ tx, roomId }: { tx: Transaction; roomId: Id }, pairId: Id): Promise<Pair> {
  const row = await tx.pair.findUnique({ where: { roomId_id: { roomId, id: pairId } }, include: { subject: true } })
  if (!row) throw notFound('pair')
  return toPair(row)
}
