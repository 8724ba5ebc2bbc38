import { curesInForce, husbandryDay, localDate } from '@fryward/husbandry'
import { type FoodAnswer, FoodAnswerSchema, type FoodView, type Id } from '@fryward/shared'
import { fromDateColumn } from '@fryward/store'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'

/** The room's last plan of its food, and whether something has changed since. */
export async function getFood({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<FoodView> {
  return readInRoom({ ctx, roomId }, async ({ tx, state }) => {
    const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
    const last = await tx.foodPlan.findFirst({
      where: { roomId },
      orderBy: [{ revision: 'desc' }, { madeAt: 'desc' }, { id: 'desc' }],
    })
    const today = localDate({ timeZone: room.timeZone, at: ctx.now })
    const underWay = curesInForce(
      (await state()).snapshot,
      husbandryDay({ room: (await state()).snapshot.room, date: today }),
    ).map(({ fact, change }) => ({ factId: fact.id, at: fact.at, change }))
    if (!last) return { plan: null, underWay }
    // As it was written by this program or an earlier one; whatever it was, it has this shape.
    const answer: FoodAnswer = FoodAnswerSchema.parse(last.answer)
    const isStale = last.revision !== room.revision || fromDateColumn(last.forDate) !== today
    return { plan: { madeAt: last.madeAt.toISOString(), revision: last.revision, isStale, ...answer }, underWay }
  })
}
