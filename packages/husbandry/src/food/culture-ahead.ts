import type { CultureDay } from '@fryward/live-feed'
import type { cultureStandings } from '@fryward/shared'
import type { SnapshotCulture } from '../snapshot/room-snapshot.ts'
import type { SharedCause } from './crash-days.ts'

/** Why a culture gives what it gives. */
export type CultureStanding = (typeof cultureStandings)[number]

/** What a rotifer culture can give on the days ahead. Animals are those in the whole vessel. */
export type CultureAhead = {
  id: string
  /** Null for one that does not stand yet. */
  culture: SnapshotCulture | null
  name: string
  volumeL: number
  standing: CultureStanding
  /** In it this morning. */
  animals: number
  /** What each day makes of the animals left: n becomes gain * n / (1 + crowding * n). */
  growth: CultureDay[]
  floorAnimals: number
  mostShare: number
  /** Taken today already for others than larvae, as a share of its litres. */
  goneShare: number
  /** What it is thinned to each day; null where the room does not thin. */
  thinnedToAnimals: number | null
  /** The first day on which it may give. */
  firstDay: number
  futures: { animals: number; growth: CultureDay[] }[]
  sharesCausesWith: { cultureId: string; causes: SharedCause[] }[]
}
