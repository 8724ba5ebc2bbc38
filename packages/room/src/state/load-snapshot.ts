import { type Fact, findSpecies, type RoomSnapshot, type RuleSetting } from '@fryward/husbandry'
import { type FactKind, type Id, RoundsSchema } from '@fryward/shared'
import { type FactSnapshotRow, readSnapshotRows, type SnapshotRows, type Transaction } from '@fryward/store'
import { nameOrLeft } from '../people/user-names.ts'

// Two months cover every window that a rule looks back over; life events are few and are kept whole.
const factWindowDays = 60
const lastingKinds: readonly FactKind[] = [
  'spawning',
  'hatch',
  'inoculation',
  'transfer',
  'loss',
  'outcome',
  'decision',
]

/** Everything the rules may know of a room, as one consistent read. */
export async function loadSnapshot(
  tx: Transaction,
  { roomId, now }: { roomId: Id; now: string },
): Promise<RoomSnapshot> {
  const since = new Date(new Date(now).getTime() - factWindowDays * 86_400_000).toISOString()
  const rows = await readSnapshotRows(tx, { roomId, since, lastingKinds })
  if (!rows) throw new Error(`There is no room ${roomId}`)
  const { ruleChanges, subjectKinds: _subjectKinds, people: _people, ...same } = rows
  return {
    ...same,
    room: { ...rows.room, rounds: RoundsSchema.parse(rows.room.rounds) },
    clutches: rows.clutches.map((clutch) => ({
      ...clutch,
      care: findSpecies(clutch.species)?.care.value ?? 'nest',
    })),
    facts: rows.facts.map((fact) => toStandingFact(fact, rows)),
    ruleSettings: settingsOf(ruleChanges),
  }
}

/** The little that rules read of a fact. Its data was checked by its kind's schema when it was written. */
function toStandingFact(row: FactSnapshotRow, { people }: SnapshotRows): Fact {
  const [id, kind, subjectId, atMs, _receivedAtMs, recordedBy, taskId, _revision, data] = row
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

function settingsOf(changes: SnapshotRows['ruleChanges']): Record<Id, RuleSetting> {
  return Object.fromEntries(
    changes.map(({ ruleId, isOn, parameters }) => [
      ruleId,
      { isOn, parameters: parameters as RuleSetting['parameters'] },
    ]),
  )
}
