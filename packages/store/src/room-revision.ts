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

export type AuditRow = {
  user_id: string | null
  actor_name: string
  action: string
  subject_id: string | null
  detail: unknown
}

/**
 * Ends a write: what it did is kept, in the order in which it was done, and listeners are told, at commit, that the room has
 * reached the revision. One statement: every write waits for it under the room's lock.
 */
export async function closeRevision(
  tx: Transaction,
  { roomId, revision, now, entries }: { roomId: string; revision: number; now: string; entries: readonly AuditRow[] },
): Promise<void> {
  const rows = entries.map((entry, index) => ({ ...entry, ordinal: index + 1 }))
  await tx.$executeRaw`
    WITH told AS MATERIALIZED (
      INSERT INTO audit_entry (room_id, revision, ordinal, at, user_id, actor_name, action, subject_id, detail)
      SELECT ${roomId}::uuid, ${revision}::integer, ordinal, ${now}::timestamptz, user_id, actor_name, action, subject_id, detail
      FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS entry(
        ordinal integer, user_id text, actor_name text, action text, subject_id uuid, detail jsonb)
    )
    SELECT pg_notify(${roomChannel}, ${JSON.stringify({ roomId, revision })})`
}

/** Serialises writers that share a word, such as one idempotency key, until commit. */
export async function lockWord(tx: Transaction, word: string): Promise<void> {
  await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${word}, 0))`
}

/** How far a room has come, as this transaction sees it; null when there is no such room. */
export async function findRevision(tx: Transaction, roomId: string): Promise<number | null> {
  return (await tx.room.findUnique({ where: { id: roomId }, select: { revision: true } }))?.revision ?? null
}
