import type { Fact } from '@fryward/husbandry'
import type { FactRow } from '@fryward/store'
import { nameOrLeft } from './person-name.ts'

/** The little that rules read of a fact. Its data was checked by its kind's schema when it was written. */
export function toStandingFact(row: FactRow, people: Record<string, string>): Fact {
  const [id, kind, subjectId, atMs, recordedBy, taskId, data] = row
  return {
    id,
    kind,
    subjectId,
    at: new Date(atMs).toISOString(),
    recordedByName: nameOrLeft(recordedBy, recordedBy === null ? null : (people[recordedBy] ?? null)),
    taskId,
    data,
  } as Fact
}
