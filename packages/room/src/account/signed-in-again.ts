import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'

// common practice: long enough to give several people their roles, short enough that a phone left lying about gives none.
const goodForMinutes = 15

/**
 * For what is worth a second look at who asks: a backup, and who may do what.
 * @throws RoomError `sign_in_again` where the password was not typed in this browser within the last quarter of an hour.
 */
export async function assertSignedInRecently({ ctx: { actor, database, now } }: { ctx: Context }): Promise<void> {
  const id = actor.kind === 'person' ? actor.sessionId : undefined
  const session = id === undefined ? null : await database.prisma.session.findUnique({ where: { id } })
  const last = Math.max(session?.createdAt.getTime() ?? 0, session?.confirmedAt?.getTime() ?? 0)
  if (last > Date.parse(now) - goodForMinutes * 60_000) return
  throw new RoomError(
    'sign_in_again',
    'This matters, so type your password once more; then it is done as you meant it.',
  )
}

/** Somebody has just shown again that it is they who sit before this browser. */
export async function noteSignedInAgain({ ctx: { actor, database, now } }: { ctx: Context }): Promise<void> {
  if (actor.kind !== 'person' || actor.sessionId === undefined) return
  await database.prisma.session.updateMany({ where: { id: actor.sessionId }, data: { confirmedAt: now } })
}
