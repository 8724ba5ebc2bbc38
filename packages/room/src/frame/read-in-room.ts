import type { Id, Role } from '@fryward/shared'
import { inSnapshot, type Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { assertMay, type RoomPermission } from './permission.ts'

/** What a read works with: one snapshot of the database. */
export type Read = { tx: Transaction; ctx: Context; roomId: Id; role: Role }

/** The frame of every read in a room: one snapshot of the database, permission first. */
export async function readInRoom<T>(
  { ctx, roomId, permission = 'read' }: { ctx: Context; roomId: Id; permission?: RoomPermission },
  run: (read: Read) => Promise<T>,
): Promise<T> {
  return inSnapshot(ctx.database, async (tx) => {
    const role = await assertMay({ tx, actor: ctx.actor, roomId, permission })
    return run({ tx, ctx, roomId, role })
  })
}
