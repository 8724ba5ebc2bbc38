import { inTransaction, type Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { keepState } from '../state/known-states.ts'
import type { RoomState } from '../state/room-state.ts'

const made = new WeakMap<Transaction, RoomState>()

/** What a write in this transaction made of a room, to be known once it is committed. */
export const madeIn = (tx: Transaction, state: RoomState): void => void made.set(tx, state)

/** One transaction; the state of the room that was written in is known to this process after the commit, and only then. */
export async function transact<T>(ctx: Context, run: (tx: Transaction) => Promise<T>): Promise<T> {
  let state: RoomState | undefined
  const result = await inTransaction(ctx.database, async (tx) => {
    const answer = await run(tx)
    state = made.get(tx)
    return answer
  })
  if (state) keepState(ctx.database, state)
  return result
}
