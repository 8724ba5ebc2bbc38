import type { Id } from '@fryward/shared'
import { addHours } from '../calendar/elapsed.ts'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { Fact } from '../facts/fact.ts'
import { effectsOf } from '../facts/index.ts'
import { factsAbout } from '../snapshot/facts-of.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'

// Older gaps have been filled by somebody, written down or not: nobody leaves a vessel low for days. common practice
const rememberedHours = 36

/** A fact that lowered (litres above 0) or raised a vessel's water. */
export type LevelChange = { fact: Fact; litres: number }
/** Litres that a vessel is short of, and what has come and gone since it was last full. */
export type MissingWater = { litres: number; changes: LevelChange[] }

/** What was taken out of a vessel and not yet put back, over the last day and a half; never more than it holds. */
export function missingWater(
  snapshot: RoomSnapshot,
  { id, volumeL }: { id: Id; volumeL: number },
  day: HusbandryDay,
): MissingWater {
  const from = addHours(day.startsAt, 24 - rememberedHours)
  let missing: MissingWater = { litres: 0, changes: [] }
  for (const change of levelChanges(snapshot, id, day)) {
    if (change.fact.at < from) continue
    const litres = Math.min(volumeL, missing.litres + change.litres)
    missing = litres <= 0 ? { litres: 0, changes: [] } : { litres, changes: [...missing.changes, change] }
  }
  return missing
}

function levelChanges(snapshot: RoomSnapshot, subjectId: Id, day: HusbandryDay): LevelChange[] {
  return (
    factsAbout(snapshot, subjectId)
      .filter(({ at }) => at < day.endsAt)
      .map((fact) => ({ fact, litres: effectsOf(fact).waterFallsL?.(fact) ?? 0 }))
      .filter(({ litres }) => litres !== 0)
      // What was taken out goes before what was put back at the same instant.
      .sort((a, b) => (a.fact.at < b.fact.at ? -1 : a.fact.at > b.fact.at ? 1 : b.litres - a.litres))
  )
}
