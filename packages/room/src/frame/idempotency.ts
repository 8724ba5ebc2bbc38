import { lockWord, type Prisma, type Transaction } from '@fryward/store'
import { actorUserId, type Context } from '../context.ts'
import { RoomError } from '../errors.ts'

export type Replay<T> = { answer: T } | null

/** The kept answer of an earlier request with the same key; the lock makes a second, simultaneous one wait for it. */
export async function findAnswer<T>(tx: Transaction, ctx: Context): Promise<Replay<T>> {
  const userId = actorUserId(ctx.actor)
  if (!ctx.idempotency || userId === null) return null
  const { key, requestHash } = ctx.idempotency
  await lockWord(tx, `${userId}/${key}`)
  const kept = await tx.idempotencyKey.findUnique({ where: { userId_key: { userId, key } } })
  if (!kept) return null
  if (kept.requestHash !== requestHash)
    throw new RoomError(
      'idempotency_mismatch',
      `The Idempotency-Key "${key}" was used before for another request. Send this one with a key of its own.`,
    )
  return { answer: kept.body as T }
}

export async function keepAnswer(tx: Transaction, ctx: Context, answer: unknown): Promise<void> {
  const userId = actorUserId(ctx.actor)
  if (!ctx.idempotency || userId === null) return
  const { key, requestHash } = ctx.idempotency
  await tx.idempotencyKey.create({
    data: { userId, key, requestHash, body: answer as Prisma.InputJsonValue, createdAt: ctx.now },
  })
}
