import type { Id } from '@fryward/shared'
import { inTransaction, type Prisma, toDateColumn } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { foodJob } from './food-job.ts'
import { type FoodThinker, markOf } from './food-thinker.ts'

// What was planned two weeks ago tells nobody anything. common practice
const keptForDays = 14
const dayMs = 86_400_000

type Asked = { ctx: Context; roomId: Id; thinker: FoodThinker }

/**
 * Works the room's food out again and keeps the plan, with the revision that it rests on. Where nothing has changed that the
 * question reads, the plan that stands is that of the newer revision too. Nothing is locked while it is worked out.
 */
export async function planRoomFood({ ctx, roomId, thinker }: Asked): Promise<'planned' | 'still-good'> {
  const { job, revision } = await readInRoom({ ctx, roomId }, foodJob)
  const asked = { roomId, forDate: toDateColumn(job.asked.horizon.today), inputHash: markOf(job) }
  const { foodPlan } = ctx.database.prisma
  const known = await foodPlan.findUnique({ where: { roomId_forDate_inputHash: asked }, select: { id: true } })
  if (known) {
    await foodPlan.updateMany({ where: { roomId, id: known.id, revision: { lt: revision } }, data: { revision } })
    return 'still-good'
  }
  const answer = (await thinker.answer(job)) as unknown as Prisma.InputJsonObject
  await inTransaction(ctx.database, async (tx) => {
    const plan = { ...asked, id: uuidv7(), revision, madeAt: ctx.now, answer }
    // Another process may have planned the same meanwhile: it is the same plan.
    await tx.foodPlan.createMany({ data: [plan], skipDuplicates: true })
    const before = new Date(Date.parse(ctx.now) - keptForDays * dayMs)
    await tx.foodPlan.deleteMany({ where: { roomId, madeAt: { lt: before } } })
  })
  return 'planned'
}
