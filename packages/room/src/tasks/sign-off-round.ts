import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { applySignOffs, type SignOffEntry } from './sign-off-task.ts'

/** Several sign-offs of one walk as one write: all or nothing, the day worked out again once. */
export async function signOffRound({
  ctx,
  roomId,
  entries,
}: {
  ctx: Context
  roomId: Id
  entries: readonly SignOffEntry[]
}): Promise<void> {
  await writeInRoom({ ctx, roomId, permission: 'sign_off' }, async (work) => {
    await applySignOffs(work, entries, () => 'tasks beside it were signed off')
  })
}
