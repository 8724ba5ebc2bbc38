import { shareAboveFloor } from '@fryward/live-feed'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { rotiferHarvestDefinition } from '../definitions/live-food/rotifer-harvest.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { doubtAbout } from '../state/culture-doubt.ts'
import { cultureRecord } from '../state/culture-history.ts'
import { asTheDayBegan, cultureOutlook, densityAt, takenOn } from '../state/culture-state.ts'
import { hasFallen } from '../state/culture-trend.ts'

/** Nothing speaks against a culture: it neither smells, sinks or swims slowly, nor do its counts fall. */
export const isSound = (snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): boolean =>
  doubtAbout(snapshot, culture, day) === null &&
  !hasFallen(cultureRecord(snapshot, culture, { until: day.endsAt }), culture)

/** Litres that a culture may give in a day in all, whoever eats them, and what of that has been taken. */
export type CultureSupply = { mostL: number; takenL: number; leftL: number; boundedBy: 'share' | 'floor' }

/** No more than the most share, and never under the floor as far as counts can tell, both as the room's harvest rule has them. */
export function cultureSupply(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): CultureSupply {
  const { mostShare, floorPerMl } = ruleInForce(snapshot, rotiferHarvestDefinition).parameters
  const taken = takenOn(snapshot, culture, day)
  // What is taken today is held against the day's own most.
  const moment = asTheDayBegan(snapshot, culture, day)
  const outlook = cultureOutlook(snapshot, culture, moment)
  const densityPerMl = densityAt(snapshot, culture, moment)?.densityPerMl ?? 0
  const aboveFloor = outlook ? shareAboveFloor({ estimate: outlook.estimate, densityPerMl, floorPerMl }) : 0
  const mostL = culture.volumeL * Math.min(mostShare, aboveFloor)
  const takenL = taken.reduce((sum, { data }) => sum + data.volumeL, 0)
  return {
    mostL,
    takenL,
    leftL: Math.max(0, mostL - takenL),
    boundedBy: aboveFloor < mostShare ? 'floor' : 'share',
  }
}
