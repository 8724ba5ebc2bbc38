import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { copepodHarvest } from '../plans/copepod-plan.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { batchesFedBy } from '../state/feed-links.ts'

/**
 * Copepods that larvae are fed beside the plan, each culture a sentence. What a nauplius saves of rotifers nobody has shown
 * for these fish, and a culture's yield leaps from day to day: larvae that were counted on it would go hungry.
 */
export function copepodsBeside(
  snapshot: RoomSnapshot,
  [today, tomorrow]: readonly [HusbandryDay, HusbandryDay],
): string[] {
  return snapshot.cultures.flatMap((culture) => {
    const fed = culture.kind === 'copepod' ? batchesFedBy(snapshot, culture, today.date) : []
    if (fed.length === 0) return []
    const gives = [today, tomorrow].some((day) => copepodHarvest(snapshot, culture, day) !== null)
    return [sentence(culture, { to: fed.map(({ name }) => name).join(', '), gives })]
  })
}

const sentence = ({ name }: SnapshotCulture, { to, gives }: { to: string; gives: boolean }): string =>
  gives
    ? `${name}: its nauplii come on top for ${to}, and no rotifer is counted less for them.`
    : `${name}: too young, thin or falling, or not counted of late, so it gives no nauplii for ${to}. Count it.`
