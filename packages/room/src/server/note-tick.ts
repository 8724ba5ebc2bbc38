import type { Absence } from '@fryward/shared'
import { lockWord } from '@fryward/store'
import type { Context } from '../context.ts'
import { transact } from '../frame/transact.ts'

// A tick comes each minute; a busy machine leaves out a few.
const unnoticedMs = 5 * 60_000

/** Notes that a scheduler is awake. @returns how long none was, where that is worth saying. */
export async function noteTick(ctx: Context): Promise<Absence | null> {
  return transact(ctx, async (tx) => {
    await lockWord(tx, 'last tick')
    const last = await tx.lastTick.findUnique({ where: { id: 1 } })
    const now = new Date(ctx.now)
    await tx.lastTick.upsert({ where: { id: 1 }, create: { at: now }, update: { at: now } })
    if (!last || now.getTime() - last.at.getTime() <= unnoticedMs) return null
    await tx.absence.createMany({ data: [{ fromAt: last.at, toAt: now }], skipDuplicates: true })
    return { from: last.at.toISOString(), to: ctx.now }
  })
}
