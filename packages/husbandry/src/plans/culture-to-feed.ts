import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { densityAt } from '../state/culture-state.ts'
import { batchesFedBy } from '../state/feed-links.ts'
import { cultureSupply } from './culture-supply.ts'

/**
 * The rotifer cultures that may feed larvae just hatched, best first: the one of which each mouth would have most, of what
 * it can still give today; where none can give any, the one that holds most. A backup is left alone.
 */
export const culturesToFeed = (snapshot: RoomSnapshot, day: HusbandryDay): readonly SnapshotCulture[] =>
  remembered(snapshot, day.date, () => bestFirst(snapshot, day))

const remembered = rememberedBySnapshot<readonly SnapshotCulture[]>()

function bestFirst(snapshot: RoomSnapshot, day: HusbandryDay): SnapshotCulture[] {
  const moment = { at: firstRound(day).startsAt, until: day.endsAt }
  return snapshot.cultures
    .filter(({ kind, isBackup, startedAt }) => kind === 'rotifer' && !isBackup && startedAt < day.endsAt)
    .map((culture) => {
      const perMl = densityAt(snapshot, culture, moment)?.densityPerMl ?? 0
      const batches = batchesFedBy(snapshot, culture, day.date).length + 1
      const { leftL } = cultureSupply(snapshot, culture, day)
      return { culture, gives: (leftL * perMl) / batches, animals: perMl * culture.volumeL }
    })
    .sort(
      (a, b) =>
        b.gives - a.gives ||
        b.animals - a.animals ||
        a.culture.name.localeCompare(b.culture.name, 'en') ||
        (a.culture.id < b.culture.id ? -1 : 1),
    )
    .map(({ culture }) => culture)
}

/** The copepods that feed larvae which start on them; a backup is left alone. */
export const workingCopepods = (snapshot: RoomSnapshot, day: HusbandryDay): readonly SnapshotCulture[] =>
  snapshot.cultures
    .filter(({ kind, isBackup, startedAt }) => kind === 'copepod' && !isBackup && startedAt < day.endsAt)
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
