import type { Context } from '../context.ts'
import { hashToken, newToken } from '../frame/secrets.ts'
import { insertTry } from './sign-in-tries.ts'

/** A link for a new password that this process alone is to mail now. */
export type OutgoingReset = { id: string; email: string; name: string; token: string; address: string }

type Outcome = { state: 'sent' | 'failed' | 'unknown'; isFinal?: boolean }

const mostAtOnce = 20
const againAfterMs = 60_000
// A link that comes later than this is out of date before it is read.
const leastLeftMs = 15 * 60_000

/**
 * Takes what was asked for and is due, and makes a link for each that has an account; the others are forgotten. Whoever stops
 * in between has sent nothing, and the person asks once more.
 */
export async function claimResets({ database: { prisma }, now }: Context): Promise<OutgoingReset[]> {
  const taken = await prisma.$queryRaw<{ id: string; email: string; address: string }[]>`
    UPDATE password_reset SET due_at = NULL WHERE id IN (
      SELECT id FROM password_reset WHERE due_at <= ${now}::timestamptz AND expires_at > ${now}::timestamptz
      ORDER BY due_at LIMIT ${mostAtOnce} FOR UPDATE SKIP LOCKED)
    RETURNING id, email, address`
  const outgoing: OutgoingReset[] = []
  for (const asked of taken) {
    const user = await prisma.user.findUnique({ where: { email: asked.email } })
    if (!user) {
      await prisma.passwordReset.deleteMany({ where: { id: asked.id } })
      continue
    }
    const token = newToken()
    const data = { userId: user.id, tokenHash: hashToken(token) }
    await prisma.passwordReset.updateMany({ where: { id: asked.id }, data })
    outgoing.push({ ...asked, name: user.name, token })
  }
  return outgoing
}

/** What surely did not go out is tried again while its link would be of use; then the record says that it was not mailed. */
export async function markReset(ctx: Context, reset: OutgoingReset, outcome: Outcome): Promise<void> {
  if (outcome.state !== 'failed') return
  const { prisma } = ctx.database
  const [dueAt, usefulUntil] = [againAfterMs, againAfterMs + leastLeftMs].map(
    (ms) => new Date(Date.parse(ctx.now) + ms),
  )
  if (outcome.isFinal !== true) {
    const again = { id: reset.id, expiresAt: { gt: usefulUntil } }
    if ((await prisma.passwordReset.updateMany({ where: again, data: { dueAt } })).count > 0) return
  }
  const knock = { email: reset.email, address: reset.address, browser: '', isKnown: false }
  await insertTry(prisma, { now: ctx.now, knock, outcome: 'reset_not_mailed' })
  await prisma.passwordReset.deleteMany({ where: { id: reset.id } })
}
