import type { Id, Tank } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { notFound } from '../errors.ts'

type TankRow = Prisma.TankGetPayload<{ include: { subject: true } }>

export function toTank({ subject, roomId: _roomId, ...tank }: TankRow): Tank {
  return {
    ...tank,
    name: subject.name,
    note: subject.note,
    endedAt: subject.endedAt?.toISOString() ?? null,
    version: subject.version,
  }
}

export async function getTankInRoom({ tx, roomId }: { tx: Transaction; roomId: Id }, tankId: Id): Promise<Tank> {
  const row = await tx.tank.findUnique({ where: { roomId_id: { roomId, id: tankId } }, include: { subject: true } })
  if (!row) throw notFound('tank')
  return toTank(row)
}
