import type { Context } from '../context.ts'
import { forgetUsedCodes } from './used-codes.ts'

// The longest window of the sign-in library's limits is a minute; a day leaves every one of them alone.
const countedForMs = 86_400_000

/** Sessions and one-time tokens that are out of date open nothing, and counts of tries are of the minute: all are rubbish. */
export async function forgetWhatHasEnded(ctx: Context): Promise<number> {
  const { prisma } = ctx.database
  const ended = { expiresAt: { lt: ctx.now } }
  const counts = [
    await prisma.session.deleteMany({ where: ended }),
    await prisma.verification.deleteMany({ where: ended }),
    await prisma.passwordReset.deleteMany({ where: ended }),
    await prisma.rateLimit.deleteMany({ where: { lastRequest: { lt: Date.parse(ctx.now) - countedForMs } } }),
  ]
  const codes = await forgetUsedCodes(ctx)
  return counts.reduce((sum, { count }) => sum + count, codes)
}
