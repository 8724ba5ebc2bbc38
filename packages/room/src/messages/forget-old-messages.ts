import type { Context } from '../context.ts'

/** What went to whom can be looked up for a season; common practice for a log of deliveries. `SentList` says the same. */
const keptDays = 90

/**
 * Ended messages older than that, but none of an alarm that still stands: what was said of it decides when it is said
 * again, and whoever was told is still to hear that it is over.
 */
export async function forgetOldMessages(ctx: Context): Promise<number> {
  const before = new Date(Date.parse(ctx.now) - keptDays * 86_400_000)
  const ofThePast = { OR: [{ alarmId: null }, { alarm: { clearedAt: { lt: before } } }] }
  const { count } = await ctx.database.prisma.message.deleteMany({ where: { endedAt: { lt: before }, ...ofThePast } })
  return count
}
