import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { type MissingWater, missingWater } from '../state/vessel-level.ts'
import { measurableL } from '../task/measures.ts'

export type RefillPlan = { litres: number; missing: MissingWater }

/** New water that a culture is short of: what was taken and not put back. Today's harvest brings its own. */
export function refillPlan(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): RefillPlan {
  const missing = missingWater(snapshot, culture, day)
  return { litres: measurableL(missing.litres), missing }
}
