import {
  type CultureEstimate,
  type HarvestAdvice,
  harvestAdvice,
  isShortOfEggs,
  shareAboveFloor,
} from '@fryward/live-feed'
import type { Instant } from '@fryward/shared'
import { daysBetween, type HusbandryDay, localDate } from '../calendar/husbandry-day.ts'
import { rotiferHarvestDefinition } from '../definitions/live-food/rotifer-harvest.ts'
import type { FactOf } from '../facts/fact.ts'
import { rememberedByContent } from '../memo/remembered.ts'
import type { ParameterValues } from '../rule/parameters.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { doubtAbout } from '../state/culture-doubt.ts'
import { type CultureRecord, cultureHistory } from '../state/culture-history.ts'
import {
  asTheDayBegan,
  type CultureDensity,
  type CultureOutlook,
  cultureOutlook,
  densityAt,
  takenOn,
} from '../state/culture-state.ts'
import { hasFallen } from '../state/culture-trend.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'
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
  /** Denser by far than gives most. */
  isCrowded: boolean
  /** What the plan of the food takes of it that day, where the day follows it. */
  order: { madeAt: Instant; litres: number } | null
}
export type NoHarvest = {
  litres: 0
  why:
    | 'not-a-rotifer-culture'
    | 'left-alone'
    | 'off'
    | 'no-density'
    | 'count-first'
    | 'falling'
    | 'in-doubt'
    | 'few-eggs'
  /** Of few eggs: it was crowded when it was counted, and thinned since; they come back. */
  isThinned?: boolean
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

/** What keeps a culture from being thinned, whatever its density; larvae still eat from one with few eggs. */
const holdsBack: readonly string[] = ['in-doubt', 'falling', 'few-eggs'] satisfies NoHarvest['why'][]

export function isHeldBack(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): boolean {
  const plan = harvestPlan(snapshot, culture, day)
  return 'why' in plan && holdsBack.includes(plan.why)
}

function workOut(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): HarvestPlan | NoHarvest {
  const { parameters } = ruleInForce(snapshot, rotiferHarvestDefinition)
  const takenToday = takenOn(snapshot, culture, day)
  const moment = asTheDayBegan(snapshot, culture, day)
  const outlook = cultureOutlook(snapshot, culture, moment)
  const density = densityAt(snapshot, culture, moment)
  const why = whyNone(snapshot, culture, { day, outlook })
  if (why) return { litres: 0, why }
  if (!outlook || !density) return { litres: 0, why: 'no-density' }
  const advice = adviceFor({ snapshot, culture, outlook, parameters, day })
  const isCrowded = isCrowdedAt(density, advice)
  // Few eggs in a thin culture: it is falling already. In a crowded one they come back once it is thinned.
  if (!isCrowded && isShortOfEggsBy(outlook.record))
    return { litres: 0, why: 'few-eggs', isThinned: isThinned(snapshot, { day, record: outlook.record, advice }) }
  return {
    takenToday,
    density,
    outlook,
    advice,
    isCrowded,
    ...litresOf({ snapshot, culture, day, density, estimate: outlook.estimate, advice }, takenToday),
  }
}

/** What speaks against taking anything, before its density does. */
function whyNone(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  { day, outlook }: { day: HusbandryDay; outlook: CultureOutlook | null },
): NoHarvest['why'] | null {
  const { isOn, parameters } = ruleInForce(snapshot, rotiferHarvestDefinition)
  if (culture.kind !== 'rotifer') return 'not-a-rotifer-culture'
  if (!isOn) return 'off'
  if (culture.isBackup && isRested(snapshot, culture, { day, everyDays: parameters.backupEveryDays }))
    return 'left-alone'
  if (!outlook) return 'no-density'
  const countAgeDays = daysSince(snapshot, outlook.record.counts.at(-1)?.fact, day.date)
  if (countAgeDays === null || countAgeDays > parameters.countedWithinDays) return 'count-first'
  if (doubtAbout(snapshot, culture, day)) return 'in-doubt'
  return hasFallen(outlook.record, culture) ? 'falling' : null
}

// Denser by this than gives most, few eggs are crowding before they are anything else. common practice
const crowdedBeyondHeld = 1.3

const isCrowdedAt = ({ densityPerMl }: Pick<CultureDensity, 'densityPerMl'>, { heldPerMl }: HarvestAdvice): boolean =>
  densityPerMl > crowdedBeyondHeld * heldPerMl

function isShortOfEggsBy({ counts }: CultureRecord): boolean {
  const last = counts.at(-1)
  return (
    last !== undefined &&
    last.eggRatio !== null &&
    isShortOfEggs({ eggRatio: last.eggRatio, females: last.females ?? undefined })
  )
}

// Within so many days of being thinned a crowded culture carries eggs again. common practice
const eggsComeBackDays = 2

/** Counted crowded some days ago, and harvested since. */
function isThinned(
  snapshot: RoomSnapshot,
  { day, record, advice }: { day: HusbandryDay; record: CultureRecord; advice: HarvestAdvice },
): boolean {
  const last = record.removals.findLast(({ fact }) => fact.kind === 'harvest')?.fact
  if (!last) return false
  return record.counts.some(
    ({ fact, densityPerMl }) =>
      isCrowdedAt({ densityPerMl }, advice) &&
      fact.at < last.at &&
      (daysSince(snapshot, fact, day.date) ?? Number.POSITIVE_INFINITY) <= eggsComeBackDays,
  )
}

type Taking = {
  snapshot: RoomSnapshot
  culture: SnapshotCulture
  day: HusbandryDay
  density: CultureDensity
  estimate: CultureEstimate
  advice: HarvestAdvice
}

/** The litres of the day, and what of them is still to be taken. */
function litresOf(
  { snapshot, culture, day, density, estimate, advice }: Taking,
  takenToday: readonly FactOf<'harvest'>[],
): Pick<HarvestPlan, 'litres' | 'dayL' | 'order'> {
  const { floorPerMl, mostShare } = ruleInForce(snapshot, rotiferHarvestDefinition).parameters
  const takenL = takenToday.reduce((sum, fact) => sum + fact.data.volumeL, 0)
  const aboveFloor = shareAboveFloor({ estimate, densityPerMl: density.densityPerMl, floorPerMl })
  const adviceL = Math.min(advice.shareOfVolume, aboveFloor) * culture.volumeL
  const order = orderFor(snapshot, { culture, day, adviceL })
  const mostL = Math.min(mostShare, aboveFloor) * culture.volumeL
  // To a jug's mark, so that the list, the culture's page and its slider say the same litres.
  const dayL = measurableLDown(order ? Math.min(order.litres, mostL) : adviceL)
  const leftL = Math.max(0, dayL - takenL)
  const isWorth = leftL > worthTaking * Math.max(dayL, 0.1)
  return { litres: isWorth ? measurableLDown(leftL) : 0, dayL, order }
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
