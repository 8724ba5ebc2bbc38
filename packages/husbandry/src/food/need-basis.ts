import { type Random, seededRandom } from '@fryward/live-feed'
import type { FoodChange, Id } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { lastDayOnRotifers } from '../plans/sooner-artemia.ts'
import type { RoomSnapshot, SnapshotBatch } from '../snapshot/room-snapshot.ts'
import type { SpeciesProfile } from '../species/index.ts'
import { livingBatches } from '../state/batch-state.ts'
import type { BatchLived } from './batch-lived.ts'
import type { FoodHorizon } from './food-days.ts'
import { type Appetite, appetiteOf, type RotiferHabits } from './rotifer-need.ts'
import { seedOf } from './seed-of.ts'

/** What every eater's need is worked out from. */
export type NeedBasis = {
  snapshot: RoomSnapshot
  horizon: FoodHorizon
  changes: readonly FoodChange[]
  habits: RotiferHabits
  /** Of a batch with counts of its own, else the mean over those that have. */
  appetiteIn: (batch: SnapshotBatch | null) => Appetite | null
  /** What became of this room's batches, of today and of before. */
  lived: readonly BatchLived[]
  /** The largest larval tank that stands empty; null without one. */
  emptyTankL: number | null
  /** Of the water of larvae, what is changed on each day of their life. */
  changedShares: readonly number[]
}

export function appetites(snapshot: RoomSnapshot, today: HusbandryDay): NeedBasis['appetiteIn'] {
  const known = new Map(livingBatches(snapshot).map((batch) => [batch.id, appetiteOf(snapshot, batch, today)]))
  const all = [...known.values()].flatMap((appetite) => (appetite ? [appetite] : []))
  const mean = (value: (appetite: Appetite) => number) => all.reduce((sum, each) => sum + value(each), 0) / all.length
  const usual = all.length > 0 ? { perLarvaPerDay: mean((a) => a.perLarvaPerDay), logSd: mean((a) => a.logSd) } : null
  return (batch) => (batch && known.get(batch.id)) ?? usual
}

export const lastRotiferDay = ({ changes }: NeedBasis, species: SpeciesProfile): number =>
  lastDayOnRotifers(
    species,
    changes.some(({ kind }) => kind === 'artemia_sooner'),
  )

/** How many larvae are to be kept of a clutch, or of a batch by itself or by a clutch that hatched into it. */
export function keptLarvae({ changes }: NeedBasis, ids: readonly Id[]): number {
  const kept = changes.findLast((change) => change.kind === 'keep_larvae' && ids.includes(change.subjectId))
  return kept?.kind === 'keep_larvae' ? kept.larvae : Number.POSITIVE_INFINITY
}

export function drawn<T>(about: NeedBasis, name: string, draw: (random: Random) => T): T[] {
  const random = seededRandom(seedOf(name))
  return Array.from({ length: about.horizon.futures }, () => draw(random))
}

export const within = (value: number, from: number, to: number) => Math.max(from, Math.min(to, value))

export function largestEmptyTankL(snapshot: RoomSnapshot): number | null {
  const lived = new Set(livingBatches(snapshot).map(({ tankId }) => tankId))
  const empty = snapshot.tanks.filter(({ id, kind }) => kind === 'larval' && !lived.has(id)).map((tank) => tank.volumeL)
  return empty.length > 0 ? Math.max(...empty) : null
}
