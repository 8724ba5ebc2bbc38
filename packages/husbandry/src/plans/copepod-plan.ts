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
import { hasBegunToFeed, type LarvalDiet, larvalDiet, tankOf } from '../state/larval-diet.ts'
import { measurableLDown } from '../task/measures.ts'

export type CopepodHarvest = {
  litres: number
  count: CultureCount
  nauplii: { fact: FactOf<'count'>; perMl: number } | null
  /** The larvae that it feeds, with the litres of their tanks. */
  eaters: { batch: SnapshotBatch; volumeL: number }[]
}

/**
 * What to pass through the sieve on a day; null when the culture is too young, not counted, or it is done, and when it is thin or
 * falls, unless small larvae live on it.
 */
export function copepodHarvest(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): CopepodHarvest | null {
  const able = ableToGive(snapshot, culture, day)
  if (!able) return null
  const { parameters, count, nauplii, isSpared } = able
  const { batches, areSmall } = eatersOf(batchesFedBy(snapshot, culture, day.date), day)
  // Small larvae that live on it are not let starve for a culture that is thin or thins out; nobody else eats of it then.
  if (isSpared && !areSmall) return null
  const about = { subjectId: culture.id, until: day.endsAt }
  const since = daysSince(snapshot, factsUntil(snapshot, 'harvest', about).at(-1), day.date)
  if (since !== null && since < (batches.length > 0 ? 1 : parameters.idleEveryDays)) return null
  const eaters = batches.flatMap((batch) => {
    const tank = tankOf(snapshot, batch)
    return tank ? [{ batch, volumeL: tank.volumeL }] : []
  })
  const { share, mostShare, wantedPerMl } = parameters
  const held = heldFor(snapshot, { batches, day })
  const wanted = held > 0 ? litresIn(eaters) * 1000 * (wantedPerMl / held) : 0
  const most = isSpared ? share : Math.max(share, mostShare)
  const litres = measurableLDown(culture.volumeL * Math.min(most, Math.max(share, wanted)))
  return litres > 0 ? { litres, count, nauplii, eaters } : null
}

// Thinner than half of what a first harvest wants a culture has nothing that larvae would notice. common practice
const thinnestShare = 0.5

/** A culture old and dense enough to give nauplii, by a count that still speaks, and whether it is spared; null for one that is not. */
function ableToGive(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay) {
  const { isOn, parameters } = ruleInForce(snapshot, copepodHarvestDefinition)
  if (!isOn || culture.kind !== 'copepod' || culture.isBackup) return null
  if (daysBetween(dateOf(snapshot, culture.startedAt), day.date) < parameters.firstHarvestAgeDays) return null
  const record = cultureRecord(snapshot, culture, { until: day.endsAt })
  const count = record.counts.at(-1)
  const countAgeDays = daysSince(snapshot, count?.fact, day.date)
  if (!count || countAgeDays === null || countAgeDays > parameters.countedWithinDays) return null
  if (count.densityPerMl < thinnestShare * parameters.firstHarvestPerMl) return null
  const nauplii = naupliiCount(snapshot, { subjectId: culture.id, until: day.endsAt }, count)
  const isThin = count.densityPerMl < parameters.firstHarvestPerMl
  return { parameters, count, nauplii, isThin, isSpared: isThin || isFallingByCounts(record) }
}

const litresIn = (tanks: readonly { volumeL: number }[]): number => tanks.reduce((sum, { volumeL }) => sum + volumeL, 0)

/** Nauplii by the last counts in all cultures that can give some of them to any of these larvae. */
function heldFor(
  snapshot: RoomSnapshot,
  { batches, day }: { batches: readonly SnapshotBatch[]; day: HusbandryDay },
): number {
  const feeding = snapshot.cultures.filter(
    (culture) =>
      culture.kind === 'copepod' && batchesFedBy(snapshot, culture, day.date).some((each) => batches.includes(each)),
  )
  return feeding.reduce((sum, culture) => sum + naupliiIn(snapshot, culture, day), 0)
}

/** Nauplii in a culture that is as dense as a harvest wants it; none in a thin one. */
function naupliiIn(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): number {
  const able = ableToGive(snapshot, culture, day)
  return able && !able.isThin ? (able.nauplii?.perMl ?? 0) * culture.volumeL * 1000 : 0
}

/**
 * Whether the largest harvest of the room's copepods would do for so many litres of small larvae besides those that live on them
 * or soon will. A room without copepods feeds such larvae with something else.
 */
export function hasNaupliiFor(snapshot: RoomSnapshot, volumeL: number, day: HusbandryDay): boolean {
  const { isOn, parameters } = ruleInForce(snapshot, copepodHarvestDefinition)
  const cultures = snapshot.cultures.filter(({ kind, isBackup }) => kind === 'copepod' && !isBackup)
  if (!isOn || cultures.length === 0) return true
  const fed = new Set(cultures.flatMap((culture) => batchesFedBy(snapshot, culture, day.date)))
  const small = [...fed].filter((batch) => isSmall(larvalDiet(batch, day.date)))
  const tanks = small.flatMap((batch) => tankOf(snapshot, batch) ?? [])
  const held = cultures.reduce((sum, culture) => sum + naupliiIn(snapshot, culture, day), 0)
  return held * parameters.mostShare >= (litresIn(tanks) + volumeL) * 1000 * parameters.wantedPerMl
}

/** Whether small larvae live on a culture. */
export const isLivedOn = (snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): boolean =>
  eatersOf(batchesFedBy(snapshot, culture, day.date), day).areSmall

/** Whether small larvae live on a culture that gives none today, or fewer than they may want, as thin as it was last counted. */
export const isWaitedFor = (snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): boolean =>
  (ableToGive(snapshot, culture, day)?.isThin ?? true) && isLivedOn(snapshot, culture, day)

/** Not on Artemia yet. */
const isSmall = (diet: LarvalDiet | null): boolean =>
  diet !== null && diet.day <= diet.species.feeding.artemiaFirstDay.value

/** Of the larvae that a culture feeds those that need its nauplii: the small ones that feed by now; else all that do. */
function eatersOf(
  batches: readonly SnapshotBatch[],
  { date }: HusbandryDay,
): { batches: SnapshotBatch[]; areSmall: boolean } {
  const diets = batches.map((batch) => ({ batch, diet: larvalDiet(batch, date) }))
  const feeding = diets.filter(({ diet }) => !diet || hasBegunToFeed(diet.species, diet.day))
  const small = feeding.filter(({ diet }) => isSmall(diet))
  const areSmall = small.length > 0
  return { areSmall, batches: (areSmall ? small : feeding).map(({ batch }) => batch) }
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
