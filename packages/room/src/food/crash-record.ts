import type { Id, Instant } from '@fryward/shared'
import type { Transaction } from '@fryward/store'

const dayMs = 86_400_000

/** Rotifer cultures that the room has lost, over the whole days on which it kept any: how often they crash here. */
export async function crashRecord(tx: Transaction, { roomId, now }: { roomId: Id; now: Instant }) {
  const cultures = await tx.culture.findMany({
    where: { roomId, kind: 'rotifer' },
    select: { startedAt: true, endCause: true, subject: { select: { endedAt: true } } },
  })
  const days = cultures.map(({ startedAt, subject }) =>
    Math.max(0, Math.floor(((subject.endedAt?.getTime() ?? Date.parse(now)) - startedAt.getTime()) / dayMs)),
  )
  const lost = cultures.filter(({ endCause }) => endCause === 'crashed' || endCause === 'contaminated')
  // One that was lost on its first day stood for a day.
  return {
    crashes: lost.length,
    cultureDays: Math.max(
      lost.length,
      days.reduce((sum, each) => sum + each, 0),
    ),
  }
}
