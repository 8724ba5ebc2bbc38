import type { Id, Role } from '@fryward/shared'
import { inSnapshot, type Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { keepState } from '../state/known-states.ts'
import { readState } from '../state/read-state.ts'
import type { RoomState } from '../state/room-state.ts'
import { assertMay, type RoomPermission } from './permission.ts'

/** What a read works with: one snapshot of the database, and the room's state as of it. */
export type Read = { tx: Transaction; ctx: Context; roomId: Id; role: Role; state: () => Promise<RoomState> }
/** What a view is made from, in a read or at the end of a write. */
export type Scope = Pick<Read, 'tx' | 'ctx' | 'roomId' | 'state'>

/** The frame of every read in a room: one snapshot of the database, permission first. */
export async function readInRoom<T>(
  { ctx, roomId, permission = 'read' }: { ctx: Context; roomId: Id; permission?: RoomPermission },
  run: (read: Read) => Promise<T>,
): Promise<T> {
  return inSnapshot(ctx.database, async (tx) => {
    const role = await assertMay({ tx, actor: ctx.actor, roomId, permission })
    let state: Promise<RoomState> | undefined
    const read = async () => {
      const found = await readState({ tx, ctx, roomId })
      keepState(ctx.database, found)
      return found
    }
    return run({
      ...{ tx, ctx, roomId, role },
      state: () => {
        state ??= read()
        return state
      },
    })
  })
}
