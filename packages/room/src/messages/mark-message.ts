import type { Id } from '@fryward/shared'
import type { Context } from '../context.ts'

/** What became of a message that was handed over. */
type Outcome = { state: 'sent' | 'failed' | 'unknown'; detail: string; isFinal?: boolean; isGone?: boolean }

// After one, two, four and eight minutes; by then an alarm has been said anew.
const mostTries = 5

/** Writes down what became of a message. What surely did not go out, and may yet, waits for another try. */
export async function markMessage(
  ctx: Context,
  { roomId, id }: { roomId: Id; id: Id },
  { state, detail, isFinal = true, isGone = false }: Outcome,
): Promise<void> {
  const { prisma } = ctx.database
  const message = await prisma.message.findUniqueOrThrow({ where: { roomId_id: { roomId, id } } })
  const isTriedAgain = state === 'failed' && !isFinal && message.tries < mostTries
  const dueAt = new Date(Date.parse(ctx.now) + 2 ** (message.tries - 1) * 60_000)
  await prisma.message.updateMany({
    where: { roomId, id, state: { in: ['claimed', 'unknown'] } },
    data: isTriedAgain ? { state: 'waiting', dueAt, detail } : { state, endedAt: ctx.now, detail },
  })
  // The browser has ended it: nothing will ever arrive there.
  if (isGone && message.way === 'push') await prisma.pushPhone.deleteMany({ where: { roomId, id: message.address } })
}
