import type { Context } from '../context.ts'
import { RoomError } from '../errors.ts'

// common practice: a mistake is seen at the latest on the next walk through the room; later, life has gone on without it.
const hoursToReopen = 24

/** @throws RoomError `too_late_to_undo`, with what to do instead, where `at` is more than a day ago. */
export function assertWithinADay(ctx: Context, at: Date, instead: string): void {
  if (Date.parse(ctx.now) - at.getTime() > hoursToReopen * 3_600_000)
    throw new RoomError('too_late_to_undo', `This can be taken back for a day. Now ${instead}.`)
}
