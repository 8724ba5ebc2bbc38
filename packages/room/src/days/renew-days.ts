import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { changesOfDays } from '../planning/plan-days.ts'

/**
 * Works the open lists of a room out again where this process would say something else, as after an upgrade: they were worked out
 * at the last write, by the rules and readings of that hour. Where both agree nothing is written.
 * @returns whether anything was written.
 */
export async function renewDays({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<boolean> {
  const frame = { ctx, roomId, permission: 'manage' } as const
  const isOld = await readInRoom(frame, async ({ tx, state }) => {
    const { created, updated, withdrawn } = await changesOfDays({ tx, roomId, ctx }, (await state()).snapshot)
    return created + updated + withdrawn > 0
  })
  if (!isOld) return false
  await writeInRoom(frame, async (work) =>
    work.audit({
      action: 'day.renew',
      detail: (planned) => ({ ...planned }),
      why: 'it was worked out again when the server started',
    }),
  )
  return true
}
