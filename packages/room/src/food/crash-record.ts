import type { Id, Instant } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import { crashesOf } from './crashes-of.ts'

/** Rotifer cultures that the room has lost, over the days on which it kept any. */
export async function crashRecord(tx: Transaction, { roomId, now }: { roomId: Id; now: Instant }) {
  const cultures = await tx.culture.findMany({
    where: { roomId, kind: 'rotifer' },
    select: { startedAt: true, endCause: true, subject: { select: { endedAt: true } } },
  })
  const kept = cultures.map(({ startedAt, endCause, subject }) => {
    return { startedAt: startedAt.toISOString(), endedAt: subject.endedAt?.toISOString() ?? null, endCause }
  })
  return crashesOf(kept, now)
}
