import { addDays, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { Gap } from '../rule/gap.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { chanceOfNights } from '../state/clutch-outlook.ts'
import { cultureSupply } from './culture-supply.ts'
import { type ToRaise, toRaise } from './hatch-tank-plan.ts'
import { rotiferNeedL } from './top-up-plan.ts'

// Larvae eat within hours of hatching: a night that is as likely as one in ten is kept food for. common practice
const likelyNight = 0.1
// For mouths that nobody has counted yet: half of what is there. common practice
const keptShare = 0.5

/**
 * Litres of what a culture can still give today that larvae come first for: what those that eat from it ask for, and half of
 * the rest where some may hatch between last night and tomorrow's.
 */
export function keptForLarvaeL(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): number {
  const { leftL } = cultureSupply(snapshot, culture, day)
  const askedL = livingBatches(snapshot).reduce(
    (sum, batch) => sum + rotiferNeedL(snapshot, batch, { culture, day }),
    0,
  )
  const restL = Math.max(0, leftL - askedL)
  return askedL + (mayHatch(snapshot, day) ? keptShare * restL : 0)
}

function mayHatch(snapshot: RoomSnapshot, day: HusbandryDay): boolean {
  const near = { from: addDays(day.date, -1), to: addDays(day.date, 1) }
  return snapshot.clutches.some(({ id }) => {
    const found = raisedOrNull(snapshot, id, day)
    return found !== null && chanceOfNights(found.outlook, near) >= likelyNight
  })
}

/** What is missing about a clutch its own tasks ask for. */
function raisedOrNull(snapshot: RoomSnapshot, id: string, day: HusbandryDay): ToRaise | null {
  try {
    return toRaise(snapshot, id, day)
  } catch (error) {
    if (error instanceof Gap) return null
    throw error
  }
}
