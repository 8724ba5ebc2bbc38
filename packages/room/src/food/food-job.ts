import type { Read } from '../frame/read-in-room.ts'
import type { FoodJob } from './answer-food.ts'
import { crashRecord } from './crash-record.ts'
import { foodAsked } from './food-asked.ts'
import { livedRecord } from './lived-record.ts'

/** What is asked about a room's food today, with the revision that it rests on. */
export async function foodJob({ tx, ctx, roomId, state }: Read): Promise<{ job: FoodJob; revision: number }> {
  const { snapshot, revision } = await state()
  const { timeZone } = snapshot.room
  const record = {
    ...(await crashRecord(tx, { roomId, now: ctx.now })),
    lived: await livedRecord(tx, { roomId, timeZone }),
  }
  return { job: foodAsked(snapshot, { now: ctx.now, record }), revision }
}
