import type { Transaction } from '../database.ts'
import { prepared } from '../prepared.ts'
import { batches } from './batches.ts'
import { clutches } from './clutches.ts'
import { type Kind, listOf, oneOf, type RowOf } from './column.ts'
import { concentrates } from './concentrates.ts'
import { cultures } from './cultures.ts'
import { type FactRow, standingFacts } from './facts.ts'
import { feedLinks } from './feed-links.ts'
import { foodPlans } from './food-plans.ts'
import { groups } from './groups.ts'
import { pairs } from './pairs.ts'
import { type RoomRow, roomColumns } from './room.ts'
import { ruleChanges } from './rule-changes.ts'
import { tanks } from './tanks.ts'

const kinds = { tanks, cultures, concentrates, pairs, clutches, batches, groups, feedLinks, foodPlans, ruleChanges }
type Lists = { [Name in keyof typeof kinds]: (typeof kinds)[Name] extends Kind<infer C> ? RowOf<C>[] : never }

/** A room's living things, settings and standing facts. Instants are ISO 8601 in UTC, dates YYYY-MM-DD. */
export type SnapshotRows = Lists & {
  room: RoomRow
  revision: number
  /** The newest revision by which something that had ended lives again. */
  reopened: number
  /** All of the window, or those written after the revision asked for; in order of `at`, then id. */
  facts: FactRow[]
  /** Facts struck out after the revision asked for. */
  struck: string[]
  /** By user id: who may have recorded facts, as far as their accounts are still there. */
  people: Record<string, string>
}

export type SnapshotAsked = {
  roomId: string
  /** Older facts are left out, except those of lasting meaning about what lives. */
  since: string
  lasting: Lasting
  /** What is known already: only what was written or struck out after this revision is read. Null for everything. */
  afterRevision: number | null
}
/** Kinds of fact, what was counted, and acts of care that mean something for as long as their subject lives. */
export type Lasting = { kinds: readonly string[]; counts: readonly string[]; acts: readonly string[] }

// What lives: all that has not ended, less clutches of pairs that have, which were laid before the window: no egg takes
// two months, so they are of the past, written down or not.
const alive = `
  SELECT subject.id, subject.name FROM subject
  LEFT JOIN clutch ON clutch.room_id = subject.room_id AND clutch.id = subject.id
  LEFT JOIN subject AS parents ON parents.room_id = clutch.room_id AND parents.id = clutch.pair_id
  WHERE subject.room_id = $1::uuid AND subject.ended_at IS NULL
    AND (clutch.id IS NULL OR parents.ended_at IS NULL OR clutch.spawned_at >= $2::timestamptz)`

const isLasting = `(fact.kind::text = ANY($3::text[]) OR (fact.kind = 'count' AND fact.data->>'of' = ANY($4::text[]))
  OR (fact.kind = 'care' AND fact.data->>'act' = ANY($5::text[])))`
// Whom a lasting fact concerns: its subject, and whoever animals came to by it.
const concerns = `VALUES (fact.subject_id::text), (fact.data->>'toSubjectId'), (fact.data->>'batchId')`

const people = `'people', (SELECT coalesce(json_object_agg(id, name), '{}') FROM "user"
      WHERE id IN (SELECT DISTINCT recorded_by FROM standing))`

const statementFor = (facts: { where: string; struck: string }): string => `
  WITH alive AS MATERIALIZED (${alive}),
    standing AS MATERIALIZED (${standingFacts(facts.where)})
  SELECT json_build_object(
    'room', ${oneOf({ columns: roomColumns })},
    'revision', room.revision,
    'reopened', (SELECT coalesce(max(reopened_revision), 0) FROM subject WHERE room_id = room.id),
    ${Object.entries(kinds)
      .map(([name, each]) => `'${name}', ${listOf(each)}`)
      .join(',\n    ')},
    'facts', (SELECT coalesce(json_agg(fact ORDER BY at, id), '[]') FROM standing),
    'struck', ${facts.struck},
    ${people}
  )::text AS snapshot
  FROM room WHERE room.id = $1::uuid`

const whole = statementFor({
  where: `fact.at >= $2::timestamptz OR (${isLasting}
    AND EXISTS (SELECT FROM (${concerns}) AS concerned (id) JOIN alive ON alive.id::text = concerned.id))`,
  struck: `'[]'::json`,
})
const since = prepared(
  'room_since',
  statementFor({
    where: 'fact.revision > $3::integer',
    struck: `(SELECT coalesce(json_agg(id), '[]') FROM fact WHERE room_id = room.id AND struck_revision > $3::integer)`,
  }),
)

/**
 * Everything that working a room out needs, in one statement and one answer: a room is worked out at every write, and
 * a round trip for each table, with each row read into objects on the way, took half as long again.
 * @returns null when there is no such room.
 */
export async function readSnapshot(tx: Transaction, asked: SnapshotAsked): Promise<SnapshotRows | null> {
  const { roomId, afterRevision } = asked
  const { kinds: ofKinds, counts, acts } = asked.lasting
  const rows =
    afterRevision === null
      ? await tx.$queryRawUnsafe<Answer[]>(whole, roomId, asked.since, ofKinds, counts, acts)
      : await tx.$queryRawUnsafe<Answer[]>(since, roomId, asked.since, afterRevision)
  return rows[0] ? JSON.parse(rows[0].snapshot) : null
}

type Answer = { snapshot: string }

/** What has ended, as far as lists of the past ask: clutches that are of the past, and facts of lasting meaning. */
export type ClosedRows = Pick<SnapshotRows, 'clutches' | 'facts' | 'people'>

const closed = `
  WITH living AS MATERIALIZED (${alive}),
    alive AS MATERIALIZED (SELECT id, name FROM subject WHERE room_id = $1::uuid AND id NOT IN (SELECT id FROM living)),
    standing AS MATERIALIZED (${standingFacts(`${isLasting}
      AND EXISTS (SELECT FROM (${concerns}) AS concerned (id) JOIN alive ON alive.id::text = concerned.id)`)})
  SELECT json_build_object(
    'clutches', ${listOf(clutches)},
    'facts', (SELECT coalesce(json_agg(fact ORDER BY at, id), '[]') FROM standing),
    ${people}
  )::text AS snapshot
  FROM room WHERE room.id = $1::uuid`

export async function readClosed(
  tx: Transaction,
  { roomId, since, lasting }: Omit<SnapshotAsked, 'afterRevision'>,
): Promise<ClosedRows> {
  const { kinds: ofKinds, counts, acts } = lasting
  const [row] = await tx.$queryRawUnsafe<Answer[]>(closed, roomId, since, ofKinds, counts, acts)
  if (!row) throw new Error(`There is no room ${roomId}`)
  return JSON.parse(row.snapshot)
}
