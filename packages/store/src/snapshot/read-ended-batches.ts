import type { Transaction } from '../database.ts'
import { date, kind, listOf, type RowOf, text } from './column.ts'
import { type FactRow, standingFacts } from './facts.ts'

const batches = kind({ id: text('id'), species: text('species'), hatchedOn: date('hatched_on') }, 'ended')

/** Larval batches that have ended, the newest hundred, with what was written into their books. */
export type EndedBatches = { batches: RowOf<typeof batches.columns>[]; facts: FactRow[] }

// Into the book of a batch writes whatever is about it, the hatch of its clutches, and moves from other batches.
const writers = `SELECT id FROM larval_batch WHERE room_id = $1::uuid
  UNION ALL SELECT clutch_id FROM batch_clutch WHERE room_id = $1::uuid AND batch_id IN (SELECT id FROM ended)`
const intoTheBook = `fact.subject_id IN (${writers})
  AND (fact.kind IN ('hatch', 'transfer', 'loss', 'outcome') OR (fact.kind = 'count' AND fact.data->>'of' = 'larvae'))`

const statement = `
  WITH ended AS MATERIALIZED (
      SELECT larval_batch.id, species, hatched_on FROM larval_batch
      JOIN subject USING (room_id, id)
      WHERE room_id = $1::uuid AND subject.ended_at IS NOT NULL ORDER BY hatched_on DESC, id LIMIT 100),
    standing AS MATERIALIZED (${standingFacts(intoTheBook)})
  SELECT json_build_object(
    'batches', ${listOf(batches)},
    'facts', (SELECT coalesce(json_agg(fact ORDER BY at, id), '[]') FROM standing)
  )::text AS past`

export async function readEndedBatches(tx: Transaction, roomId: string): Promise<EndedBatches> {
  const [row] = await tx.$queryRawUnsafe<{ past: string }[]>(statement, roomId)
  return JSON.parse(row!.past)
}
