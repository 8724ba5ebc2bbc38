import { localDate } from '@fryward/husbandry'
import type { Id } from '@fryward/shared'
import { fromDateColumn, toDateColumn } from '@fryward/store'
import type { Work } from '../frame/write-in-room.ts'
import type { EndedLinks } from './reopen-links.ts'

/**
 * Feed links of a culture or a batch that ends: those that run end today, those still to come are not made.
 * @returns which, to be kept with the end: whoever takes it back has them again.
 */
export async function endLinksOf(work: Work, end: { cultureId: Id } | { batchId: Id }): Promise<EndedLinks> {
  const { tx, roomId, ctx } = work
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  const untilOn = localDate({ timeZone: room.timeZone, at: ctx.now })
  const today = toDateColumn(untilOn)
  const rows = await tx.feedLink.findMany({ where: { roomId, ...end, untilOn: null }, orderBy: { id: 'asc' } })
  const running = rows.filter(({ fromOn }) => fromOn <= today)
  await tx.feedLink.updateMany({
    where: { roomId, id: { in: running.map(({ id }) => id) } },
    data: { untilOn: today, version: { increment: 1 } },
  })
  await tx.feedLink.deleteMany({ where: { roomId, ...end, untilOn: null } })
  const toCome = rows
    .filter(({ fromOn }) => fromOn > today)
    .map(({ id, batchId, cultureId, fromOn }) => ({ id, batchId, cultureId, fromOn: fromDateColumn(fromOn) }))
  return { untilOn, ended: running.map(({ id }) => id), toCome }
}
