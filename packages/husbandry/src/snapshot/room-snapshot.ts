import type {
  CareKind,
  ClutchIntent,
  CultureKind,
  FoodOrders,
  Id,
  Instant,
  PlainDate,
  PlainTime,
  RotiferStrain,
  Round,
  TankKind,
  UnitSystem,
} from '@fryward/shared'
import type { Fact } from '../facts/fact.ts'

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
  /** What was planned of the food, as far as it is for a day; null without a plan. */
  foodPlan: SnapshotFoodPlan | null
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
  /** Of its own; null for the hours of its use (`ownLightHours`). */
  lightHours: number | null
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
  /** What it shares with others of the same word; null where nobody has said. */
  airLine: string | null
  shelf: string | null
  tools: string | null
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
export type SnapshotGroup = Named & {
  species: string
  tankId: Id
  fromBatchId: Id | null
  settledOn: PlainDate
  /** As their batch did, which may have ended since; null for fish that came otherwise. */
  hatchedOn: PlainDate | null
}
export type SnapshotFeedLink = { id: Id; batchId: Id; cultureId: Id; fromOn: PlainDate; untilOn: PlainDate | null }
export type SnapshotFoodPlan = { madeAt: Instant; days: FoodOrders[] }
export type RuleSetting = { isOn: boolean; parameters: Record<string, number | boolean | string> }
