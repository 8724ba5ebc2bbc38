import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot.ts'
import { type MissingWater, missingWater } from '../../state/vessel-level.ts'
import { measurableL } from '../measures.ts'

export const rotiferRefillId = 'rotifer-refill'

/** Parameters of the refill; here because a harvest is filled up in the same standing. */
export const rotiferRefillParameters = {
  worthL: {
    type: 'number',
    label: 'worth a refill',
    unit: 'L',
    default: 0.1,
    minimum: 0.01,
    maximum: 20,
    source: commonPractice('a jug’s mark'),
  },
} satisfies Parameters

export type RefillPlan = { litres: number; missing: MissingWater }

/** New water that a culture is short of: what was taken and not put back. Today's harvest brings its own. */
export function refillPlan(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): RefillPlan {
  const missing = missingWater(snapshot, culture, day)
  return { litres: measurableL(missing.litres), missing }
}
