import type {
  CareKind,
  ClutchIntent,
  CultureKind,
  Fact,
  FactOf,
  Id,
  Instant,
  PlainDate,
  PlainTime,
  RotiferStrain,
  Round,
  TankKind,
  UnitSystem,
} from '@fryward/shared'

/**
 * Everything the rules may know of a room at one moment: identity and settings as rows, and what happened as facts.
 * Facts are the standing ones only (nothing struck out), in order of `at`, then id. State is worked out from them.
 */
export type RoomSnapshot = {
  room: RoomSettings
  tanks: SnapshotTank[]
  cultures: SnapshotCulture[]
  concentrates: SnapshotConcentrate[]
  pairs: SnapshotPair[]
  clutches: SnapshotClutch[]
  batches: SnapshotBatch[]
  groups: SnapshotGroup[]
  feedLinks: SnapshotFeedLink[]
  facts: Fact[]
  /** What the room has changed of the rules; a rule that is not named here runs with its defaults. */
  ruleSettings: Record<string, RuleSetting>
}

export type RoomSettings = {
  id: Id
  name: string
  timeZone: string
  units: UnitSystem
  lightsOnAt: PlainTime
  lightsOffAt: PlainTime
  rounds: Round[]
  salinity: number
  temperatureC: number
}

type Named = { id: Id; name: string }

export type SnapshotTank = Named & {
  kind: TankKind
  volumeL: number
  temperatureC: number
  salinity: number
  hasFilter: boolean
}

export type SnapshotCulture = Named & {
  kind: CultureKind
  strain: RotiferStrain | null
  volumeL: number
  temperatureC: number
  salinity: number
  hasFilter: boolean
  isBackup: boolean
  concentrateId: Id | null
  parentCultureId: Id | null
  startedAt: Instant
}

export type SnapshotConcentrate = Named & { cellsPerMl: number; openedOn: PlainDate | null; useBy: PlainDate | null }
export type SnapshotPair = Named & {
  species: string
  tankId: Id
  nestSite: string
  formedOn: PlainDate | null
  isResting: boolean
}
export type SnapshotClutch = Named & {
  pairId: Id
  species: string
  care: CareKind
  tankId: Id
  /** As meant when it was written down; `clutchIntent` says what is meant now. */
  intent: ClutchIntent
  spawnedAt: Instant
}
export type SnapshotBatch = Named & { species: string; tankId: Id; clutchIds: Id[]; hatchedOn: PlainDate }
export type SnapshotGroup = Named & { species: string; tankId: Id; fromBatchId: Id | null; settledOn: PlainDate }
export type SnapshotFeedLink = { id: Id; batchId: Id; cultureId: Id; fromOn: PlainDate; untilOn: PlainDate | null }
export type RuleSetting = { isOn: boolean; parameters: Record<string, number | boolean | string> }

/** All that state is worked out from. */
export type Happened = Pick<RoomSnapshot, 'facts'>

type FactIndex = { length: number; byKindAndSubject: Map<string, Fact[]> }
const indexes = new WeakMap<readonly Fact[], FactIndex>()

/** Facts by kind and subject, sorted out once for each list of facts: rules ask hundreds of times a day. */
function indexOf(facts: readonly Fact[]): FactIndex {
  const known = indexes.get(facts)
  if (known?.length === facts.length) return known
  const byKindAndSubject = new Map<string, Fact[]>()
  for (const fact of facts) {
    const key = `${fact.kind} ${fact.subjectId}`
    const same = byKindAndSubject.get(key)
    if (same) same.push(fact)
    else byKindAndSubject.set(key, [fact])
  }
  const index = { length: facts.length, byKindAndSubject }
  indexes.set(facts, index)
  return index
}

/** Standing facts of one kind about one subject, oldest first. */
export function factsOf<K extends Fact['kind']>(snapshot: Happened, kind: K, subjectId: Id): FactOf<K>[] {
  const found = indexOf(snapshot.facts).byKindAndSubject.get(`${kind} ${subjectId}`) ?? []
  return found.filter((fact): fact is FactOf<K> => fact.kind === kind)
}

export function lastFactOf<K extends Fact['kind']>(snapshot: Happened, kind: K, subjectId: Id): FactOf<K> | undefined {
  return factsOf(snapshot, kind, subjectId).at(-1)
}
