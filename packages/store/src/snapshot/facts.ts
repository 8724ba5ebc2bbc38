import type { FactKind } from '../generated/enums.ts'
import type { Column } from './column.ts'

/** A fact by position: there are thousands, and names in each of them would be most of the answer. */
export type FactRow = [
  id: string,
  kind: FactKind,
  subjectId: string,
  atMs: number,
  recordedBy: string | null,
  taskId: string | null,
  data: unknown,
]

type ColumnsOf<Row extends unknown[]> = { [Place in keyof Row]: Column<Row[Place]> }
const cells: ColumnsOf<FactRow> = [
  { sql: 'fact.id' },
  { sql: 'fact.kind' },
  { sql: 'fact.subject_id' },
  { sql: 'extract(epoch FROM fact.at) * 1000' },
  { sql: 'fact.recorded_by' },
  { sql: 'sign_off.task_id' },
  { sql: 'fact.data' },
]

/** Standing facts that meet a condition, each as one array, beside what they are put in order by. */
export const standingFacts = (where: string): string =>
  `SELECT json_build_array(${cells.map(({ sql }) => sql).join(', ')}) AS fact, fact.at, fact.id, fact.recorded_by
   FROM fact
   LEFT JOIN sign_off ON sign_off.room_id = fact.room_id AND sign_off.id = fact.sign_off_id
   WHERE fact.room_id = $1::uuid AND fact.struck_at IS NULL AND (${where})`
