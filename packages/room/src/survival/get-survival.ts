import type { Id, SurvivalQuery, SurvivalReview } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { reviewsIn, toRow } from './survival-rows.ts'

/** How many of each clutch made it, stage by stage. */
export async function getSurvival({
  ctx,
  roomId,
  query,
}: {
  ctx: Context
  roomId: Id
  query: SurvivalQuery
}): Promise<SurvivalReview> {
  return readInRoom({ ctx, roomId }, async (read) => {
    const { past, reviews } = await reviewsIn(read, query)
    return { rows: reviews.map((review) => toRow(past, review)) }
  })
}
