import type { Transaction } from './database.ts'
import type {
  ClutchIntent,
  CultureKind,
  FactKind,
  RotiferStrain,
  SubjectKind,
  TankKind,
  UnitSystem,
} from './generated/enums.ts'

type Named = { id: string; name: string }

/** A room's living things, settings and standing facts. Instants are ISO 8601 in UTC, dates YYYY-MM-DD. */
export type SnapshotRows = {
  room: Named & {
    timeZone: string
    units: UnitSystem
    lightsOnAt: string
    lightsOffAt: string
    rounds: unknown
    salinity: number
    temperatureC: number
  }
  tanks: (Named & { kind: TankKind; volumeL: number; temperatureC: number; salinity: number; hasFilter: boolean })[]
  cultures: (Named & {
    kind: CultureKind
    strain: RotiferStrain | null
    volumeL: number
    temperatureC: number
    salinity: number
    hasFilter: boolean
    isBackup: boolean
    concentrateId: string | null
    parentCultureId: string | null
    startedAt: string
  })[]
  concentrates: (Named & { cellsPerMl: number; openedOn: string | null; useBy: string | null })[]
  pairs: (Named & { species: string; tankId: string; nestSite: string; formedOn: string | null; isResting: boolean })[]
  clutches: (Named & { pairId: string; species: string; tankId: string; intent: ClutchIntent; spawnedAt: string })[]
  batches: (Named & { species: string; tankId: string; clutchIds: string[]; hatchedOn: string })[]
  groups: (Named & { species: string; tankId: string; fromBatchId: string | null; settledOn: string })[]
  feedLinks: { id: string; batchId: string; cultureId: string; fromOn: string; untilOn: string | null }[]
  /** In order of `at`, then id. */
  facts: FactSnapshotRow[]
  /** By id: of everything in the room, ended or not. */
  subjectKinds: Record<string, SubjectKind>
  /** By user id: who recorded the room's facts, as far as their accounts are still there. */
  people: Record<string, string>
  /** The newest change of each rule that was ever changed. */
  ruleChanges: { ruleId: string; isOn: boolean; parameters: unknown }[]
}

/** A fact by position: there are thousands, and names in each of them would be most of the answer. */
export type FactSnapshotRow = [
  id: string,
  kind: FactKind,
  subjectId: string,
  atMs: number,
  receivedAtMs: number,
  recordedBy: string | null,
  taskId: string | null,
  revision: number,
  data: unknown,
]

/**
 * Everything that working a room out needs, in one statement and one answer: a room is worked out at every write, and
 * a round trip for each table, with each row read into objects on the way, took half as long again.
 * @param since older facts are left out, except the few of lasting meaning: life events, decisions and counts of the whole.
 * @returns null when there is no such room.
 */
export async function readSnapshotRows(
  tx: Transaction,
  { roomId, since, lastingKinds }: { roomId: string; since: string; lastingKinds: readonly FactKind[] },
): Promise<SnapshotRows | null> {
  const [row] = await tx.$queryRaw<{ snapshot: string }[]>`
    WITH alive AS MATERIALIZED (
      SELECT id, name FROM subject WHERE room_id = ${roomId}::uuid AND ended_at IS NULL
    )
    SELECT json_build_object(
      'room', (SELECT json_build_object('id', room.id, 'name', room.name, 'timeZone', time_zone, 'units', units,
        'lightsOnAt', lights_on_at, 'lightsOffAt', lights_off_at, 'rounds', rounds, 'salinity', salinity,
        'temperatureC', temperature_c)),
      'tanks', (SELECT coalesce(json_agg(json_build_object('id', id, 'name', alive.name, 'kind', kind,
        'volumeL', volume_l, 'temperatureC', temperature_c, 'salinity', salinity, 'hasFilter', has_filter)
        ORDER BY id), '[]') FROM tank JOIN alive USING (id) WHERE room_id = room.id),
      'cultures', (SELECT coalesce(json_agg(json_build_object('id', id, 'name', alive.name, 'kind', kind,
        'strain', strain, 'volumeL', volume_l, 'temperatureC', temperature_c, 'salinity', salinity,
        'hasFilter', has_filter, 'isBackup', is_backup, 'concentrateId', concentrate_id,
        'parentCultureId', parent_culture_id,
        'startedAt', to_char(started_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'))
        ORDER BY id), '[]') FROM culture JOIN alive USING (id) WHERE room_id = room.id),
      'concentrates', (SELECT coalesce(json_agg(json_build_object('id', id, 'name', name, 'cellsPerMl', cells_per_ml,
        'openedOn', opened_on, 'useBy', use_by) ORDER BY id), '[]')
        FROM concentrate WHERE room_id = room.id AND NOT is_finished),
      'pairs', (SELECT coalesce(json_agg(json_build_object('id', id, 'name', alive.name, 'species', species,
        'tankId', tank_id, 'nestSite', nest_site, 'formedOn', formed_on, 'isResting', is_resting)
        ORDER BY id), '[]') FROM pair JOIN alive USING (id) WHERE room_id = room.id),
      'clutches', (SELECT coalesce(json_agg(json_build_object('id', clutch.id, 'name', alive.name,
        'pairId', pair_id, 'species', pair.species, 'tankId', pair.tank_id, 'intent', intent,
        'spawnedAt', to_char(spawned_at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'))
        ORDER BY clutch.id), '[]')
        FROM clutch JOIN alive USING (id) JOIN pair ON pair.room_id = clutch.room_id AND pair.id = clutch.pair_id
        WHERE clutch.room_id = room.id),
      'batches', (SELECT coalesce(json_agg(json_build_object('id', id, 'name', alive.name, 'species', species,
        'tankId', tank_id, 'hatchedOn', hatched_on,
        'clutchIds', (SELECT coalesce(json_agg(clutch_id ORDER BY clutch_id), '[]') FROM batch_clutch
          WHERE batch_clutch.room_id = larval_batch.room_id AND batch_id = larval_batch.id))
        ORDER BY id), '[]') FROM larval_batch JOIN alive USING (id) WHERE room_id = room.id),
      'groups', (SELECT coalesce(json_agg(json_build_object('id', id, 'name', alive.name, 'species', species,
        'tankId', tank_id, 'fromBatchId', from_batch_id, 'settledOn', settled_on)
        ORDER BY id), '[]') FROM juvenile_group JOIN alive USING (id) WHERE room_id = room.id),
      'feedLinks', (SELECT coalesce(json_agg(json_build_object('id', id, 'batchId', batch_id,
        'cultureId', culture_id, 'fromOn', from_on, 'untilOn', until_on) ORDER BY id), '[]')
        FROM feed_link WHERE room_id = room.id),
      'subjectKinds', (SELECT json_object_agg(id, kind) FROM subject WHERE room_id = room.id),
      'people', (SELECT coalesce(json_object_agg(id, name), '{}') FROM "user"
        WHERE id IN (SELECT recorded_by FROM fact WHERE room_id = room.id)),
      'facts', (SELECT coalesce(json_agg(json_build_array(fact.id, fact.kind, subject_id,
        extract(epoch FROM at) * 1000, extract(epoch FROM fact.received_at) * 1000, recorded_by, sign_off.task_id,
        fact.revision, data) ORDER BY at, fact.id), '[]')
        FROM fact
        LEFT JOIN sign_off ON sign_off.room_id = fact.room_id AND sign_off.id = fact.sign_off_id
        WHERE fact.room_id = room.id AND struck_at IS NULL
          AND (at >= ${since}::timestamptz
            OR fact.kind = ANY(${lastingKinds}::"FactKind"[])
            OR (fact.kind = 'count' AND data->>'of' IN ('eggs', 'larvae', 'juveniles')))),
      'ruleChanges', (SELECT coalesce(json_agg(json_build_object('ruleId', rule_id, 'isOn', is_on,
        'parameters', parameters)), '[]') FROM (
          SELECT DISTINCT ON (rule_id) rule_id, is_on, parameters FROM rule_change
          WHERE room_id = room.id ORDER BY rule_id, version DESC) AS newest)
    )::text AS snapshot
    FROM room WHERE room.id = ${roomId}::uuid`
  return row ? JSON.parse(row.snapshot) : null
}
