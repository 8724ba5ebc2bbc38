import { localDate } from '@fryward/husbandry'
import type { Id } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import type { Work } from '../frame/write-in-room.ts'

/** Feed links of a culture or a batch that ends: those that run end today, those still to come are not made. */
export async function endLinksOf(work: Work, end: { cultureId: Id } | { batchId: Id }): Promise<void> {
  const { tx, roomId, ctx } = work
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  const today = toDateColumn(localDate({ timeZone: room.timeZone, at: ctx.now }))
  await tx.feedLink.updateMany({
    where: { roomId, ...end, untilOn: null, fromOn: { lte: today } },
    data: { untilOn: today, version: { increment: 1 } },
  })
  await tx.feedLink.deleteMany({ where: { roomId, ...end, untilOn: null } })
}
