import type { Id, SignOff } from '@fryward/shared'
import type { Context } from '../context.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { writeInRoom } from '../work/write-in-room.ts'
import { applySignOff } from './sign-off-task.ts'

/** Several sign-offs of one walk as one write: all or nothing, the day worked out again once. */
export async function signOffRound({
  ctx,
  roomId,
  entries,
}: {
  ctx: Context
  roomId: Id
  entries: { taskId: Id; input: SignOff }[]
}): Promise<void> {
  await writeInRoom({ ctx, roomId, permission: 'sign_off' }, async (work) => {
    for (const entry of entries) await applySignOff(work, entry)
    await replanRoom(work, 'a round was done')
  })
}
