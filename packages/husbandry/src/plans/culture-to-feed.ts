import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { densityAt } from '../state/culture-state.ts'
import { batchesFedBy } from '../state/feed-links.ts'

/**
 * The rotifer cultures that may feed larvae just hatched, best first: one that feeds no others yet, then the one that
 * holds most animals. A backup is left alone.
 */
export function culturesToFeed(snapshot: RoomSnapshot, day: HusbandryDay): SnapshotCulture[] {
  const moment = { at: firstRound(day).startsAt, until: day.endsAt }
  return snapshot.cultures
    .filter(({ kind, isBackup, startedAt }) => kind === 'rotifer' && !isBackup && startedAt < day.endsAt)
    .map((culture) => ({
      culture,
      fed: batchesFedBy(snapshot, culture, day.date).length,
      animals: (densityAt(snapshot, culture, moment)?.densityPerMl ?? 0) * culture.volumeL,
    }))
    .sort(
      (a, b) =>
        a.fed - b.fed ||
        b.animals - a.animals ||
        a.culture.name.localeCompare(b.culture.name, 'en') ||
        (a.culture.id < b.culture.id ? -1 : 1),
    )
    .map(({ culture }) => culture)
}
