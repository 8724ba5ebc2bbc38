import type { Quantity, TaskState } from '@fryward/shared'
import type { Transaction } from './database.ts'

/** What working a day out says of a task. */
export type TaskSaid = {
  content: unknown
  context: unknown
  due_at: string
  late_at: string
  closes_at: string
  is_for_stand_in: boolean
  fingerprint: string
}
export type TaskRewrite = TaskSaid & {
  id: string
  /** Whether people are told of the new amount, and what it was. */
  is_amount_told: boolean
  amount_before: Quantity | null
}
export type NewTask = TaskSaid & {
  id: string
  key: string
  rule_id: string
  subject_id: string
  station: string
  on_date: string
  round_id: string
  ordinal: number
}

/** Adds many open tasks in one statement; one whose key the room has already is left as it is. */
export async function insertTasks(
  tx: Transaction,
  { roomId, rows, now }: { roomId: string; rows: readonly NewTask[]; now: string },
): Promise<void> {
  if (rows.length === 0) return
  await tx.$executeRaw`
    INSERT INTO task (room_id, id, key, rule_id, subject_id, station, on_date, round_id, ordinal, state, due_at, late_at,
      closes_at, is_for_stand_in, content, context, fingerprint, created_at)
    SELECT ${roomId}::uuid, id, key, rule_id, subject_id, station, on_date, round_id, ordinal, 'open', due_at, late_at,
      closes_at, is_for_stand_in, content, context, fingerprint, ${now}::timestamptz
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS new(
      id uuid, key text, rule_id text, subject_id uuid, station text, on_date date, round_id text, ordinal integer,
      due_at timestamptz, late_at timestamptz, closes_at timestamptz, is_for_stand_in boolean, content jsonb,
      context jsonb, fingerprint text)
    ON CONFLICT DO NOTHING`
}

/** Rewrites many open (or withdrawn, now wanted again) tasks in one statement; a day is worked out at every write. */
export async function rewriteTasks(
  tx: Transaction,
  input: { roomId: string; rows: readonly TaskRewrite[]; revision: number; now: string; why: string },
): Promise<void> {
  const { roomId, rows, revision, now, why } = input
  if (rows.length === 0) return
  await tx.$executeRaw`
    WITH new AS MATERIALIZED (
      SELECT * FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS new(
        id uuid, content jsonb, context jsonb, due_at timestamptz, late_at timestamptz, closes_at timestamptz,
        is_for_stand_in boolean, fingerprint text, is_amount_told boolean, amount_before jsonb)
    ), told AS (
      INSERT INTO task_change (room_id, task_id, revision, at, before, after, why)
      SELECT ${roomId}::uuid, id, ${revision}::integer, ${now}::timestamptz,
        jsonb_build_object('amount', amount_before), jsonb_build_object('amount', content->'amount'), ${why}
      FROM new WHERE is_amount_told
    )
    UPDATE task SET
      content = new.content, context = new.context, due_at = new.due_at, late_at = new.late_at, closes_at = new.closes_at,
      is_for_stand_in = new.is_for_stand_in, fingerprint = new.fingerprint,
      state = 'open', reason = NULL, closed_at = NULL, closed_by = NULL, version = task.version + 1
    FROM new WHERE task.room_id = ${roomId}::uuid AND task.id = new.id`
}

export type Newcomer = { id: string; createdMs: number }

/** The things of a room that came into it after an instant: mostly none. */
export async function listNewcomers(
  tx: Transaction,
  { roomId, since }: { roomId: string; since: string },
): Promise<Newcomer[]> {
  return tx.$queryRaw<Newcomer[]>`
    SELECT id, (extract(epoch FROM created_at) * 1000)::float8 AS "createdMs"
    FROM subject WHERE room_id = ${roomId}::uuid AND created_at > ${since}::timestamptz`
}

export type KeptTaskRow = {
  id: string
  key: string
  state: TaskState
  fingerprint: string
  amount: Quantity | null
}

/** The tasks of some dates without what they say: a fingerprint of it and the amount are enough to work a day out again. */
export async function listKeptTasks(
  tx: Transaction,
  { roomId, dates }: { roomId: string; dates: readonly string[] },
): Promise<KeptTaskRow[]> {
  return tx.$queryRaw<KeptTaskRow[]>`
    SELECT id, key, state::text AS state, fingerprint,
      nullif(content->'amount', 'null'::jsonb) AS amount
    FROM task WHERE room_id = ${roomId}::uuid AND on_date = ANY(${dates}::date[])`
}

/** Opens the lists of days, or marks them as worked out again, in one statement. */
export async function keepDayLists(
  tx: Transaction,
  input: { roomId: string; now: string; revision: number; days: readonly { on_date: string; gaps: unknown }[] },
): Promise<void> {
  const { roomId, now, revision, days } = input
  await tx.$executeRaw`
    INSERT INTO day_list (room_id, on_date, opened_at, planned_at, revision, gaps)
    SELECT ${roomId}::uuid, on_date, ${now}::timestamptz, ${now}::timestamptz, ${revision}::integer, gaps
    FROM jsonb_to_recordset(${JSON.stringify(days)}::jsonb) AS day(on_date date, gaps jsonb)
    ON CONFLICT (room_id, on_date) DO UPDATE
    SET planned_at = excluded.planned_at, revision = excluded.revision, gaps = excluded.gaps`
}
