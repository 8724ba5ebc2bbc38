import type { Concentrate, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { toConcentrate } from './concentrate-view.ts'

export async function listConcentrates({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Concentrate[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) =>
    (await tx.concentrate.findMany({ where: { roomId }, orderBy: { id: 'asc' } })).map(toConcentrate),
  )
}
