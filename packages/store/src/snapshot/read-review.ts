import type { Transaction } from '../database.ts'
import type { SubjectKind } from '../generated/enums.ts'
import { batches } from './batches.ts'
import { clutches } from './clutches.ts'
import { column, instant, kind, listOf, number, oneOf, type RowOf, text } from './column.ts'
import { type FactRow, standingFacts } from './facts.ts'
import { groups } from './groups.ts'
import type { Lasting } from './read-snapshot.ts'
import { type RoomRow, roomColumns } from './room.ts'

/** What is summed up of the feedings of a batch: one row a food and culture. */
const meals = kind(
  {
    batchId: text('batch_id'),
    food: text('food'),
    cultureId: column<string | null>('culture_id'),
    firstAt: instant('first_at'),
    lastAt: instant('last_at'),
    times: number('times'),
  },
  'eaten',
  'first_at, batch_id, food, culture_id',
)
/** Tanks that pairs and batches were said to be in, as the audit of their changes tells. */
const stays = kind(
  { subjectId: text('subject_id'), tankId: text("detail->>'tankId'"), since: instant('at') },
  "audit_entry WHERE room_id = room.id AND subject_id IS NOT NULL AND detail->>'tankId' IS NOT NULL",
  'revision, ordinal',
)
const subjects = kind(
  {
    id: text('id'),
    kind: column<SubjectKind>('kind'),
    name: text('name'),
    endedAt: column<string | null>(instant('ended_at').sql),
  },
  'subject WHERE room_id = room.id',
)

/** Everything that a review of the past reads of a room: what lives and what has ended alike. */
export type ReviewRows = {
  room: RoomRow
  subjects: RowOf<typeof subjects.columns>[]
  clutches: RowOf<typeof clutches.columns>[]
  batches: RowOf<typeof batches.columns>[]
  groups: RowOf<typeof groups.columns>[]
  meals: RowOf<typeof meals.columns>[]
  stays: RowOf<typeof stays.columns>[]
  facts: FactRow[]
}

// Beside what lasts, the looks that saw a batch settled: they date its metamorphosis.
const told = `(fact.kind::text = ANY($2::text[]) OR (fact.kind = 'count' AND fact.data->>'of' = ANY($3::text[]))
  OR (fact.kind = 'observation' AND fact.data->'signs' ? 'settled'))`

const statement = `
  WITH alive AS MATERIALIZED (SELECT id, name FROM subject WHERE room_id = $1::uuid),
    standing AS MATERIALIZED (${standingFacts(told)}),
    eaten AS MATERIALIZED (
      SELECT fact.subject_id AS batch_id, fact.data->>'food' AS food, fact.data->>'fromCultureId' AS culture_id,
        min(fact.at) AS first_at, max(fact.at) AS last_at, count(*)::integer AS times
      FROM fact JOIN larval_batch ON larval_batch.room_id = fact.room_id AND larval_batch.id = fact.subject_id
      WHERE fact.room_id = $1::uuid AND fact.kind = 'feeding' AND fact.struck_at IS NULL
      GROUP BY 1, 2, 3)
  SELECT json_build_object(
    'room', ${oneOf({ columns: roomColumns })},
    'subjects', ${listOf(subjects)},
    'clutches', ${listOf(clutches)},
    'batches', ${listOf(batches)},
    'groups', ${listOf(groups)},
    'meals', ${listOf(meals)},
    'stays', ${listOf(stays)},
    'facts', (SELECT coalesce(json_agg(fact ORDER BY at, id), '[]') FROM standing)
  )::text AS review
  FROM room WHERE room.id = $1::uuid`

/** The whole past of a room as far as its review asks, in one statement. */
export async function readReview(
  tx: Transaction,
  { roomId, lasting }: { roomId: string; lasting: Omit<Lasting, 'acts'> },
): Promise<ReviewRows> {
  const [row] = await tx.$queryRawUnsafe<{ review: string }[]>(statement, roomId, lasting.kinds, lasting.counts)
  if (!row) throw new Error(`There is no room ${roomId}`)
  return JSON.parse(row.review)
}
