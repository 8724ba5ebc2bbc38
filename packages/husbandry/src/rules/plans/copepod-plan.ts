import type { FactOf } from '@fryward/shared'
import { daysBetween, type HusbandryDay } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotCulture } from '../../snapshot.ts'
import { lastCare } from '../../state/care.ts'
import { countDensity } from '../../state/count-density.ts'
import { type CultureCount, cultureRecord } from '../../state/culture-history.ts'
import { isFallingByCounts } from '../../state/culture-trend.ts'
import { dateOf, daysSince, factsUntil } from '../../state/day-facts.ts'
import { batchesFedBy } from '../../state/feed-links.ts'
import { measurableLDown } from '../measures.ts'

export const copepodHarvestId = 'copepod-harvest'
export const copepodSiphonId = 'copepod-siphon'

/** Parameters of the harvest; here because the water to mix follows from the same plan. */
export const copepodHarvestParameters = {
  firstHarvestAgeDays: {
    type: 'number',
    label: 'youngest age for a first harvest',
    unit: 'days',
    default: 14,
    minimum: 1,
    maximum: 90,
    source: commonPractice('about two weeks, until those it was started with have young that are grown'),
  },
  firstHarvestPerMl: {
    type: 'number',
    label: 'of grown ones before a harvest',
    unit: 'per_mL',
    default: 1,
    minimum: 0.05,
    maximum: 100,
    source: commonPractice(
      'half of what production tanks hold, about 2 grown per mL harvested daily: Oceanic Institute, WAS meeting abstract 156505',
    ),
  },
  share: {
    type: 'number',
    label: 'of the water through the sieve',
    unit: 'share',
    default: 0.25,
    minimum: 0.05,
    maximum: 0.5,
    source: commonPractice('a quarter, which also renews the water'),
  },
  idleEveryDays: {
    type: 'number',
    label: 'from one harvest to the next while no larvae are fed',
    unit: 'days',
    default: 3,
    minimum: 1,
    maximum: 30,
    source: commonPractice(
      'so that they do not crowd: eggs a female fell from 26 a day at 0.25 grown per mL to under 1 at 8, and taking young out more often raised the yield (Kline & Laidley 2015, Aquaculture, doi 10.1016/j.aquaculture.2014.09.022, abstract)',
    ),
  },
  countedWithinDays: {
    type: 'number',
    label: 'since the count at most',
    unit: 'days',
    default: 7,
    minimum: 1,
    maximum: 30,
    source: commonPractice('no harvest on an old count'),
  },
  restGoesTo: {
    type: 'choice',
    label: 'what no larvae eat goes to',
    choices: ['other_fish', 'drain'] as const,
    default: 'other_fish' as const,
    source: commonPractice('surplus feeds other fish'),
  },
} satisfies Parameters

export const copepodSiphonParameters = {
  everyDays: {
    type: 'number',
    label: 'from one siphoning to the next',
    unit: 'days',
    default: 7,
    minimum: 1,
    maximum: 60,
    source: commonPractice('weekly'),
  },
  share: {
    type: 'number',
    label: 'of the water',
    unit: 'share',
    default: 0.2,
    minimum: 0.05,
    maximum: 0.8,
    source: commonPractice('a fifth, as much as a slow siphon takes'),
  },
} satisfies Parameters

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
  const rule = { id: copepodHarvestId, isOnByDefault: true, parameters: copepodHarvestParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
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
  const rule = { id: copepodSiphonId, isOnByDefault: true, parameters: copepodSiphonParameters }
  const { isOn, parameters } = ruleInForce(snapshot, rule)
  if (!isOn || culture.kind !== 'copepod') return null
  const { startedAt } = cultureRecord(snapshot, culture, { until: day.endsAt })
  const last = lastCare(snapshot, 'siphon_bottom', { subjectId: culture.id, day })
  const from = last && last.at > startedAt ? last : { at: startedAt }
  if ((daysSince(snapshot, from, day.date) ?? 0) < parameters.everyDays) return null
  const litres = measurableLDown(culture.volumeL * parameters.share)
  return litres > 0 ? { litres } : null
}
