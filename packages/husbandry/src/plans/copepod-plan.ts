import { daysBetween, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { copepodHarvestDefinition } from '../definitions/copepods/copepod-harvest.ts'
import { copepodSiphonDefinition } from '../definitions/copepods/copepod-siphon.ts'
import { countDensity } from '../facts/count-density.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { lastCare } from '../state/care.ts'
import { type CultureCount, cultureRecord } from '../state/culture-history.ts'
import { isFallingByCounts } from '../state/culture-trend.ts'
import { dateOf, daysSince, factsUntil } from '../state/day-facts.ts'
import { batchesFedBy } from '../state/feed-links.ts'
import { measurableLDown } from '../task/measures.ts'

export type CopepodHarvest = {
  litres: number
  count: CultureCount
  nauplii: { fact: FactOf<'count'>; perMl: number } | null
  batches: SnapshotBatch[]
}

/** What to pass through the sieve on a day; null when the culture is too young, thin, falling or not counted, or it is done. */
export function copepodHarvest(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): CopepodHarvest | null {
  const { isOn, parameters } = ruleInForce(snapshot, copepodHarvestDefinition)
  if (!isOn || culture.kind !== 'copepod' || culture.isBackup) return null
  if (daysBetween(dateOf(snapshot, culture.startedAt), day.date) < parameters.firstHarvestAgeDays) return null
  const about = { subjectId: culture.id, until: day.endsAt }
  const record = cultureRecord(snapshot, culture, { until: day.endsAt })
  const count = record.counts.at(-1)
  const countAgeDays = daysSince(snapshot, count?.fact, day.date)
  if (!count || countAgeDays === null || countAgeDays > parameters.countedWithinDays) return null
  if (count.densityPerMl < parameters.firstHarvestPerMl || isFallingByCounts(record)) return null
  const batches = batchesFedBy(snapshot, culture, day.date)
  const since = daysSince(snapshot, factsUntil(snapshot, 'harvest', about).at(-1), day.date)
  if (since !== null && since < (batches.length > 0 ? 1 : parameters.idleEveryDays)) return null
  const litres = measurableLDown(culture.volumeL * parameters.share)
  return litres > 0 ? { litres, count, nauplii: naupliiCount(snapshot, about, count), batches } : null
}

/** Nauplii per mL as counted with the last count of the grown ones; null when they were left out. */
function naupliiCount(
  snapshot: RoomSnapshot,
  about: { subjectId: string; until: string },
  grown: CultureCount,
): CopepodHarvest['nauplii'] {
  const fact = factsUntil(snapshot, 'count', about).findLast(
    ({ at, data }) => data.of === 'copepod_nauplii' && at >= grown.fact.at,
  )
  if (fact?.data.volumeMl === undefined) return null
  const { animals, volumeMl, dilution } = fact.data
  return { fact, perMl: countDensity({ animals, volumeMl, dilution }).densityPerMl }
}

/** New water for a copepod culture whose bottom is due for the siphon; null when it is not. */
export function copepodChange(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): { litres: number } | null {
  const { isOn, parameters } = ruleInForce(snapshot, copepodSiphonDefinition)
  if (!isOn || culture.kind !== 'copepod') return null
  const { startedAt } = cultureRecord(snapshot, culture, { until: day.endsAt })
  const last = lastCare(snapshot, 'siphon_bottom', { subjectId: culture.id, day })
  const from = last && last.at > startedAt ? last : { at: startedAt }
  if ((daysSince(snapshot, from, day.date) ?? 0) < parameters.everyDays) return null
  const litres = measurableLDown(culture.volumeL * parameters.share)
  return litres > 0 ? { litres } : null
}
