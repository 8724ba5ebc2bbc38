import { daysBetween, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot.ts'
import { cultureStartDate } from '../../state/culture-state.ts'
import { daysSince, factsUntil } from '../../state/day-facts.ts'
import { measurableL } from '../measures.ts'

export const algaeSplitId = 'microalgae-split'

export const algaeSplitParameters = {
  everyDays: {
    type: 'number',
    label: 'from one split to the next',
    unit: 'days',
    default: 7,
    minimum: 1,
    maximum: 60,
    source: commonPractice('about weekly, in full growth'),
  },
  share: {
    type: 'number',
    label: 'of the culture',
    unit: 'share',
    default: 0.5,
    minimum: 0.1,
    maximum: 0.9,
    source: commonPractice('half, so that it stays dense enough to outgrow what drifts in'),
  },
} satisfies Parameters

/** Litres to split off a microalgae culture; null when it is no such culture, not due, or was last seen pale or clear. */
export function algaeSplit(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): { litres: number } | null {
  const rule = { id: algaeSplitId, isOnByDefault: true, parameters: algaeSplitParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  if (!isOn || culture.kind !== 'microalgae') return null
  const about = { subjectId: culture.id, until: day.endsAt }
  const last = factsUntil(snapshot, 'water_change', about).findLast(({ data }) => data.removedL > 0)
  const since =
    daysSince(snapshot, last, day.date) ?? daysBetween(cultureStartDate(snapshot, culture, day.endsAt), day.date)
  const look = factsUntil(snapshot, 'observation', about).at(-1)
  const isPale = look?.data.signs.some((sign) => sign === 'water_tinted' || sign === 'water_clear') === true
  if (since < parameters.everyDays || isPale) return null
  return { litres: measurableL(culture.volumeL * parameters.share) }
}
