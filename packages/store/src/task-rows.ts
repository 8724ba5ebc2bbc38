import type { Quantity, TaskState } from '@fryward/shared'
import type { Transaction } from './database.ts'

/** What working a day out again says of a kept task. */
export type TaskRewrite = {
  id: string
  content: unknown
  context: unknown
  due_at: string
  late_at: string
  closes_at: string
  is_for_stand_in: boolean
  fingerprint: string
}

/** Rewrites many open (or withdrawn, now wanted again) tasks in one statement; a day is worked out at every write. */
export async function rewriteTasks(
  tx: Transaction,
  { roomId, rows }: { roomId: string; rows: readonly TaskRewrite[] },
): Promise<void> {
  if (rows.length === 0) return
  await tx.$executeRaw`
    UPDATE task SET
      content = new.content, context = new.context, due_at = new.due_at, late_at = new.late_at, closes_at = new.closes_at,
      is_for_stand_in = new.is_for_stand_in, fingerprint = new.fingerprint,
      state = 'open', reason = NULL, closed_at = NULL, closed_by = NULL, version = task.version + 1
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS new(
      id uuid, content jsonb, context jsonb, due_at timestamptz, late_at timestamptz, closes_at timestamptz, is_for_stand_in boolean,
      fingerprint text)
    WHERE task.room_id = ${roomId}::uuid AND task.id = new.id`
}

export type KeptTaskRow = { id: string; key: string; state: TaskState; fingerprint: string; amount: Quantity | null }

/** A day's tasks without what they say: a fingerprint of it and the amount are enough to work the day out again. */
export async function listKeptTasks(
  tx: Transaction,
  { roomId, date }: { roomId: string; date: string },
): Promise<KeptTaskRow[]> {
  return tx.$queryRaw<KeptTaskRow[]>`
    SELECT id, key, state::text AS state, fingerprint, nullif(content->'amount', 'null'::jsonb) AS amount
    FROM task WHERE room_id = ${roomId}::uuid AND on_date = ${date}::date`
}
