import type { HusbandryDay } from '../../calendar/husbandry-day.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot.ts'
import { litresMissing } from '../../state/vessel-level.ts'
import { measurableL } from '../measures.ts'
import { harvestPlan } from './harvest-plan.ts'

export type RefillPlan = { litres: number; missingL: number; toBeTakenL: number }

/** New water that a culture needs today: what was taken and not put back, and what is still to be taken. */
export function refillPlan(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): RefillPlan {
  const missingL = litresMissing(snapshot, culture, day)
  const toBeTakenL = harvestPlan(snapshot, culture, day).litres
  return { litres: measurableL(Math.min(culture.volumeL, missingL + toBeTakenL)), missingL, toBeTakenL }
}
