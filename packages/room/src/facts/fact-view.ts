import type { Fact, Id, SubjectKind } from '@fryward/shared'
import { nameOf } from '../people/user-names.ts'

type FactRow = {
  id: Id
  kind: Fact['kind']
  subjectId: Id
  at: Date
  receivedAt: Date
  recordedBy: string | null
  data: unknown
  revision: number
  struckAt: Date | null
  struckBy: string | null
  struckReason: string | null
  subject: { kind: SubjectKind }
  signOff: { taskId: Id } | null
}

/** A fact as the wire and the rules know it. Its data was checked by its kind's schema when it was written. */
export function toFact(row: FactRow, names: ReadonlyMap<string, string>): Fact {
  return {
    id: row.id,
    kind: row.kind,
    subjectId: row.subjectId,
    subjectKind: row.subject.kind,
    at: row.at.toISOString(),
    receivedAt: row.receivedAt.toISOString(),
    recordedByName: nameOf(names, row.recordedBy),
    taskId: row.signOff?.taskId ?? null,
    struckAt: row.struckAt?.toISOString() ?? null,
    struckByName: row.struckBy ? nameOf(names, row.struckBy) : null,
    struckReason: row.struckReason,
    revision: row.revision,
    data: row.data,
  } as Fact
}
