import { localDate } from '@fryward/husbandry'
import { fromDateColumn } from '@fryward/store'
import { RoomError } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'

/** A list of days ahead is for reading: its amounts still follow from what today brings. What is due tonight is today's. */
export async function assertItsDay(
  { tx, roomId, ctx }: Work,
  { onDate, dueAt }: { onDate: Date; dueAt: Date },
): Promise<void> {
  // What is due by now is of today or earlier, in any zone: most tasks ask nothing more.
  if (dueAt.toISOString() <= ctx.now) return
  const { timeZone } = await tx.room.findUniqueOrThrow({ where: { id: roomId }, select: { timeZone: true } })
  const today = localDate({ timeZone, at: ctx.now })
  if (fromDateColumn(onDate) > today)
    throw new RoomError(
      'too_early',
      'This is on the list of a day to come, which is for reading: amounts may still change. Sign it off or skip it on its day.',
    )
}
