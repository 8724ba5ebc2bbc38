import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'
import type { SpeciesProfile } from '../species/index.ts'
import { type Cure, curesOf } from '../state/cures.ts'

/** Rotifers and Artemia together for two days before the rotifers end. common practice */
const overlapDays = 2

/** What says that the room ends rotifers two days after the first nauplii; null where it feeds them as long as usual. */
export const artemiaSooner = (snapshot: RoomSnapshot, day: HusbandryDay): Cure<'artemia_sooner'> | null =>
  curesOf(snapshot, 'artemia_sooner', day).at(-1) ?? null

/** The last day of life on rotifers; sooner where Artemia takes over two days after its first. -1 without any. */
export function lastDayOnRotifers({ feeding }: SpeciesProfile, isSooner: boolean): number {
  const usual = feeding.rotiferLastDay.value ?? -1
  return isSooner ? Math.min(usual, feeding.artemiaFirstDay.value + overlapDays) : usual
}
