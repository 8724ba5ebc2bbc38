import type { Culture, Id } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { notFound } from '../errors.ts'

export function toCulture({
  subject,
  roomId: _roomId,
  startedAt,
  ...culture
}: Prisma.CultureGetPayload<{ include: { subject: true } }>): Culture {
  return {
    ...culture,
    name: subject.name,
    note: subject.note,
    startedAt: startedAt.toISOString(),
    endedAt: subject.endedAt?.toISOString() ?? null,
    endReason: subject.endReason,
    version: subject.version,
  }
}

export async function getCultureInRoom(
  { tx, roomId }: { tx: Transaction; roomId: Id },
  cultureId: Id,
): Promise<Culture> {
  const row = await tx.culture.findUnique({
    where: { roomId_id: { roomId, id: cultureId } },
    include: { subject: true },
  })
  if (!row) throw notFound('culture')
  return toCulture(row)
}
