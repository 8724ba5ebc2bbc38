import { feedsToday, husbandryDay, localDate } from '@fryward/husbandry'
import type { FeedToday, Id } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'

/** Who eats from what today: what was given, and what the list of the day still asks for. */
export async function listFeedsToday({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<FeedToday[]> {
  return readInRoom({ ctx, roomId }, async ({ state }) => {
    const { snapshot } = await state()
    const date = localDate({ timeZone: snapshot.room.timeZone, at: ctx.now })
    return feedsToday(snapshot, husbandryDay({ room: snapshot.room, date }))
  })
}
