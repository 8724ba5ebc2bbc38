import type { FoodOrders, Id } from '@fryward/shared'
import { lockRoom, type Prisma, type Transaction, toDateColumn } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { inTurn } from '../frame/in-turn.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { transact } from '../frame/transact.ts'
import { workInRoom } from '../frame/write-in-room.ts'
import { foodJob } from './food-job.ts'
import { ordersOf, saysTheSame } from './food-orders.ts'
import { type FoodThinker, markOf } from './food-thinker.ts'

// What was planned two weeks ago tells nobody anything. common practice
const keptForDays = 14
const dayMs = 86_400_000

type Asked = { ctx: Context; roomId: Id; thinker: Pick<FoodThinker, 'answer'> }

/**
 * Works the room's food out again and keeps the plan, with the revision that it rests on. Where nothing has changed that the
 * question reads, the plan that stands is that of the newer revision too. Nothing is locked while it is worked out. Where the
 * plan says something else than the list that follows it, the days are planned anew.
 */
export async function planRoomFood({ ctx, roomId, thinker }: Asked): Promise<'planned' | 'still-good'> {
  const { job, revision } = await readInRoom({ ctx, roomId }, foodJob)
  const mark = { roomId, forDate: toDateColumn(job.asked.horizon.today), inputHash: markOf(job) }
  const known = await ctx.database.prisma.foodPlan.findUnique({
    where: { roomId_forDate_inputHash: mark },
    select: { id: true },
  })
  const answer = known ? null : await thinker.answer(job)
  await inTurn(ctx, roomId, () =>
    transact(ctx, async (tx) => {
      await lockRoom(tx, roomId)
      if (answer) {
        const orders = ordersOf(answer.outlook) as unknown as Prisma.InputJsonArray
        const said = { answer: answer as unknown as Prisma.InputJsonObject, orders }
        // Another process may have planned the same meanwhile: it is the same plan.
        const plan = { ...mark, ...said, id: uuidv7(), revision, madeAt: ctx.now }
        await tx.foodPlan.createMany({ data: [plan], skipDuplicates: true })
        const before = new Date(Date.parse(ctx.now) - keptForDays * dayMs)
        await tx.foodPlan.deleteMany({ where: { roomId, madeAt: { lt: before } } })
      }
      await keepTo({ tx, ctx, roomId, revision }, mark)
    }),
  )
  return answer ? 'planned' : 'still-good'
}

type Keeping = { tx: Transaction; ctx: Context; roomId: Id; revision: number }

/** The plan holds for the newer revision; and rules read it from now on where it says something else than the one they read. */
async function keepTo(
  { tx, ctx, roomId, revision }: Keeping,
  mark: { roomId: Id; forDate: Date; inputHash: string },
): Promise<void> {
  const { id, orders } = await tx.foodPlan.findUniqueOrThrow({
    where: { roomId_forDate_inputHash: mark },
    select: { id: true, orders: true },
  })
  const holdsFor = (at: number) =>
    tx.foodPlan.updateMany({ where: { roomId, id, revision: { lt: at } }, data: { revision: at } })
  await holdsFor(revision)
  const standing = await tx.foodPlan.findFirst({
    where: { roomId, standsSince: { not: null } },
    orderBy: { standsSince: 'desc' },
    select: { orders: true },
  })
  const read = (json: unknown) => (json ?? []) as FoodOrders[]
  if (saysTheSame(read(standing?.orders), read(orders))) return
  await workInRoom({ tx, ctx, roomId, permission: 'manage' }, async (work) => {
    await tx.foodPlan.update({ where: { roomId_id: { roomId, id } }, data: { standsSince: work.revision } })
    // What this write changes the plan does not read; what others wrote meanwhile it may.
    if (work.revision === revision + 1) await holdsFor(work.revision)
    work.audit({
      action: 'food.plan',
      detail: (planned) => ({ ...planned }),
      why: 'the food of the weeks ahead was planned again',
    })
  })
}
