import type { Food, Id, Instant, PlainDate } from '@fryward/shared'
import { localDate } from '../calendar/husbandry-day.ts'
import type { Happened } from '../snapshot/facts-of.ts'
import type { SnapshotBatch, SnapshotClutch, SnapshotGroup } from '../snapshot/room-snapshot.ts'

/** What one batch ate of one food from one culture, summed up. */
export type Meals = {
  batchId: Id
  food: Food
  cultureId: Id | null
  firstAt: Instant
  lastAt: Instant
  times: number
}

/** Since when something is in a tank, as it was written down. */
export type Stay = { subjectId: Id; tankId: Id; since: Instant }

/**
 * A room as its review reads it: what lives and what has ended alike, with the standing facts that say how many there
 * were (spawnings, hatches, moves, losses, outcomes, counts of heads) and the looks that saw a batch settled.
 */
export type ReviewRoom = Happened & {
  timeZone: string
  today: PlainDate
  clutches: readonly SnapshotClutch[]
  batches: readonly (SnapshotBatch & { endedAt: Instant | null })[]
  groups: readonly (SnapshotGroup & { endedAt: Instant | null })[]
  meals: readonly Meals[]
  /** Of pairs and batches, oldest first. */
  stays: readonly Stay[]
}

export const dateIn = ({ timeZone }: Pick<ReviewRoom, 'timeZone'>, at: Instant): PlainDate =>
  localDate({ timeZone, at })
