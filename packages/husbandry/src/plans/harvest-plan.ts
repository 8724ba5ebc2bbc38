import { type HarvestAdvice, harvestAdvice } from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { daysBetween, type HusbandryDay, localDate } from '../calendar/husbandry-day.ts'
import { firstRound } from '../calendar/rounds.ts'
import { rotiferHarvestDefinition } from '../definitions/live-food/rotifer-harvest.ts'
import type { FactOf } from '../facts/fact.ts'
import { rememberedByContent } from '../memo/remembered.ts'
import type { ParameterValues } from '../rule/parameters.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { doubtAbout } from '../state/culture-doubt.ts'
import { cultureHistory } from '../state/culture-history.ts'
import { type CultureDensity, type CultureOutlook, cultureOutlook, densityAt } from '../state/culture-state.ts'
import { hasFallen } from '../state/culture-trend.ts'
import { daysSince, factsOnDay, factsUntil } from '../state/day-facts.ts'
import { cultureOrder } from '../state/food-orders.ts'
import { measurableLDown } from '../task/measures.ts'

export type HarvestPlan = {
  /** What is still to be taken today, to a jug's mark; 0 when nothing is. */
  litres: number
  /** What the whole day stands for, to a jug's mark. */
  dayL: number
  takenToday: FactOf<'harvest'>[]
  density: CultureDensity
  outlook: CultureOutlook
  advice: HarvestAdvice
  /** What the plan of the food takes of it that day, where the day follows it. */
  order: { madeAt: Instant; litres: number } | null
}
export type NoHarvest = {
  litres: 0
  why: 'not-a-rotifer-culture' | 'left-alone' | 'off' | 'no-density' | 'count-first' | 'falling' | 'in-doubt'
}

// Advice is remembered by everything it depends on, so that a day that is worked out again costs no new draws.
const advices = rememberedByContent<HarvestAdvice>(1000)
// A remainder under a tenth of the day's harvest is a jug's error, not a task. common practice
const worthTaking = 0.1

const remembered = rememberedBySnapshot<HarvestPlan | NoHarvest>()

/** What one day may take from a culture, before and after what has been taken already. The list, the water to mix and a culture's page all ask here. */
export function harvestPlan(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay) {
  return remembered(snapshot, `${culture.id} ${day.date}`, () => workOut(snapshot, culture, day))
}

function workOut(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): HarvestPlan | NoHarvest {
  const rule = ruleInForce(snapshot, rotiferHarvestDefinition)
  if (culture.kind !== 'rotifer') return { litres: 0, why: 'not-a-rotifer-culture' }
  if (!rule.isOn) return { litres: 0, why: 'off' }
  if (culture.isBackup && isRested(snapshot, culture, { day, everyDays: rule.parameters.backupEveryDays }))
    return { litres: 0, why: 'left-alone' }
  const takenToday = factsOnDay(snapshot, 'harvest', { subjectId: culture.id, day })
  // Judged as it stood when the day began, so that what is taken today does not shrink the day's own plan.
  const moment = { at: firstRound(day).startsAt, until: takenToday[0]?.at ?? day.endsAt }
  const outlook = cultureOutlook(snapshot, culture, moment)
  const density = densityAt(snapshot, culture, moment)
  if (!outlook || !density) return { litres: 0, why: 'no-density' }
  const lastCount = outlook.record.counts.at(-1)
  const countAgeDays = daysSince(snapshot, lastCount?.fact, day.date)
  if (countAgeDays === null || countAgeDays > rule.parameters.countedWithinDays)
    return { litres: 0, why: 'count-first' }
  if (doubtAbout(snapshot, culture, day)) return { litres: 0, why: 'in-doubt' }
  if (hasFallen(outlook.record, culture)) return { litres: 0, why: 'falling' }
  const takenL = takenToday.reduce((sum, fact) => sum + fact.data.volumeL, 0)
  const advice = adviceFor({ snapshot, culture, outlook, parameters: rule.parameters, day })
  const aboveFloor = density.densityPerMl > 0 ? Math.max(0, 1 - rule.parameters.floorPerMl / density.densityPerMl) : 0
  const adviceL = Math.min(advice.shareOfVolume, aboveFloor) * culture.volumeL
  const order = orderFor(snapshot, { culture, day, adviceL })
  const mostL = Math.min(rule.parameters.mostShare, aboveFloor) * culture.volumeL
  // To a jug's mark, so that the list, the culture's page and its slider say the same litres.
  const wholeDayL = measurableLDown(order ? Math.min(order.litres, mostL) : adviceL)
  const leftL = Math.max(0, wholeDayL - takenL)
  const isWorth = leftL > worthTaking * Math.max(wholeDayL, 0.1)
  return {
    litres: isWorth ? measurableLDown(leftL) : 0,
    dayL: wholeDayL,
    takenToday,
    density,
    outlook,
    advice,
    order,
  }
}

/** What is eaten and thinned by the plan, of a culture that may be harvested; a backup is never thinned for the plan alone. */
function orderFor(
  snapshot: RoomSnapshot,
  { culture, day, adviceL }: { culture: SnapshotCulture; day: HusbandryDay; adviceL: number },
): HarvestPlan['order'] {
  const order = cultureOrder(snapshot, culture, day.date)
  if (!order || adviceL <= 0 || (culture.isBackup && order.fedL <= adviceL)) return null
  return { madeAt: order.madeAt, litres: order.fedL + order.spareL }
}

/** A backup is not touched every day: its last harvest before today was less than so many days ago. */
function isRested(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { day, everyDays }: { day: HusbandryDay; everyDays: number },
): boolean {
  const last = factsUntil(snapshot, 'harvest', { subjectId: culture.id, until: day.startsAt }).at(-1)
  const since = daysSince(snapshot, last, day.date)
  return since !== null && since < everyDays
}

function adviceFor(input: {
  snapshot: RoomSnapshot
  culture: SnapshotCulture
  outlook: CultureOutlook
  parameters: ParameterValues<typeof rotiferHarvestDefinition.parameters>
  day: HusbandryDay
}): HarvestAdvice {
  const { snapshot, culture, outlook, parameters, day } = input
  const startedOn = localDate({ timeZone: snapshot.room.timeZone, at: outlook.record.startedAt })
  const harvests = outlook.record.removals.filter(({ fact }) => fact.kind === 'harvest')
  const dependsOn = [
    cultureHistory(outlook.record, culture),
    outlook.estimate.day,
    culture.volumeL,
    startedOn,
    day.date,
    parameters,
  ]
  // By the estimate from all counts, which one miscount moves less than itself; the floor also by the count (workOut).
  return advices(dependsOn, () =>
    harvestAdvice({
      estimate: outlook.estimate,
      volumeL: culture.volumeL,
      ageDays: Math.max(0, daysBetween(startedOn, day.date)),
      isFirstHarvest: harvests.length === 0,
      floorPerMl: parameters.floorPerMl,
      firstHarvestPerMl: parameters.firstHarvestPerMl,
      firstHarvestAgeDays: parameters.firstHarvestAgeDays,
      usualFraction: parameters.dailyShare,
      maximumFraction: parameters.mostShare,
    }),
  )
}
