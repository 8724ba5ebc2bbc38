import type { Transaction } from './database.ts'

/**
 * Takes the room's next revision and with it the room's row lock until commit, so that revisions commit in order.
 * Null when there is no such room.
 */
export async function advanceRevision(tx: Transaction, roomId: string): Promise<number | null> {
  const rows = await tx.$queryRaw<
    { revision: number }[]
  >`UPDATE room SET revision = revision + 1 WHERE id = ${roomId}::uuid RETURNING revision`
  return rows[0]?.revision ?? null
}

/** Takes the room's row lock without a revision, for work that looks first whether there is anything to write. */
export async function lockRoom(tx: Transaction, roomId: string): Promise<void> {
  await tx.$queryRaw`SELECT id FROM room WHERE id = ${roomId}::uuid FOR NO KEY UPDATE`
}

export const roomChannel = 'fryward_room'
/** A trigger tells it of each session that ends. */
export const sessionChannel = 'fryward_session'

/** Tells listeners, at commit, that the room has reached a revision. */
export async function notifyRoom(
  tx: Transaction,
  { roomId, revision }: { roomId: string; revision: number },
): Promise<void> {
  await tx.$executeRaw`SELECT pg_notify(${roomChannel}, ${JSON.stringify({ roomId, revision })})`
}

/** Serialises writers that share a word, such as one idempotency key, until commit. */
export async function lockWord(tx: Transaction, word: string): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${word}, 0))`
}

/** How far a room has come, as this transaction sees it; null when there is no such room. */
export async function findRevision(tx: Transaction, roomId: string): Promise<number | null> {
  return (await tx.room.findUnique({ where: { id: roomId }, select: { revision: true } }))?.revision ?? null
}
