import type { Id } from '@fryward/shared'
import { inTransaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { assertMay } from '../frame/permission.ts'
import { personOf } from '../frame/person-of.ts'

/**
 * Moves a person's "since you last looked" mark forward, never back. It is theirs alone and no fact of the room, so it
 * takes no revision and leaves no audit row.
 */
export async function markLooked({
  ctx,
  roomId,
  revision,
}: {
  ctx: Context
  roomId: Id
  revision: number
}): Promise<{ ok: true }> {
  return inTransaction(ctx.database, async (tx) => {
    await assertMay({ tx, actor: ctx.actor, roomId, permission: 'read' })
    const userId = personOf(ctx.actor)
    const key = { roomId_userId: { roomId, userId } }
    const room = await tx.room.findUniqueOrThrow({ where: { id: roomId }, select: { revision: true } })
    const seen = Math.min(revision, room.revision)
    const before = await tx.lastLook.findUnique({ where: key })
    if (!before || before.revision <= seen)
      await tx.lastLook.upsert({
        where: key,
        create: { roomId, userId, revision: seen, at: ctx.now },
        update: { revision: seen, at: ctx.now },
      })
    return { ok: true }
  })
}
