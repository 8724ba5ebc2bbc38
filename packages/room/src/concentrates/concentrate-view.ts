import type { Concentrate, Id } from '@fryward/shared'
import { fromDateColumn, type Prisma, type Transaction } from '@fryward/store'
import { notFound } from '../errors.ts'

export function toConcentrate(row: Prisma.ConcentrateGetPayload<object>): Concentrate {
  return {
    id: row.id,
    name: row.name,
    cellsPerMl: row.cellsPerMl,
    openedOn: row.openedOn ? fromDateColumn(row.openedOn) : null,
    useBy: row.useBy ? fromDateColumn(row.useBy) : null,
    isFinished: row.isFinished,
    version: row.version,
  }
}

export async function getConcentrateInRoom(
  { tx, roomId }: { tx: Transaction; roomId: Id },
  concentrateId: Id,
): Promise<Concentrate> {
  const row = await tx.concentrate.findUnique({ where: { roomId_id: { roomId, id: concentrateId } } })
  if (!row) throw notFound('bottle of concentrate')
  return toConcentrate(row)
}
