import { forecastCulture, HARVEST_PRACTICE, type HarvestAdvice, harvestAdvice } from '@fryward/live-feed'
import type { FactOf } from '@fryward/shared'
import { daysBetween, type HusbandryDay, localDate } from '../../calendar/husbandry-day.ts'
import { commonPractice, type Parameters, type ParameterValues } from '../../engine/parameters.ts'
import { ruleInForce } from '../../engine/rule-settings.ts'
import type { RoomSnapshot, SnapshotCulture } from '../../snapshot.ts'
import { cultureHistory } from '../../state/culture-history.ts'
import { type CultureDensity, type CultureOutlook, cultureOutlook, densityAt } from '../../state/culture-state.ts'
import { isFallingByCounts } from '../../state/culture-trend.ts'
import { daysSince, factsOnDay } from '../../state/day-facts.ts'
import { rememberedByContent, rememberedBySnapshot } from '../../state/memo.ts'
import { measurableLDown } from '../measures.ts'
import { firstRound } from '../rounds.ts'

export const rotiferHarvestId = 'rotifer-harvest'

/** Parameters of the harvest rule; here because refill and water to mix follow from the same plan. */
export const harvestParameters = {
  firstHarvestAgeDays: {
    type: 'number',
    label: 'youngest age for a first harvest',
    unit: 'days',
    default: HARVEST_PRACTICE.firstHarvestAgeDays,
    minimum: 1,
    maximum: 30,
    source: commonPractice(),
  },
  firstHarvestPerMl: {
    type: 'number',
    label: 'density for a first harvest',
    unit: 'per_mL',
    default: HARVEST_PRACTICE.firstHarvestPerMl,
    minimum: 20,
    maximum: 5000,
    source: commonPractice(),
  },
  dailyShare: {
    type: 'number',
    label: 'taken a day',
    unit: 'share',
    default: HARVEST_PRACTICE.usualFraction,
    minimum: 0.02,
    maximum: 0.5,
    source: commonPractice('about a fifth of the volume a day'),
  },
  mostShare: {
    type: 'number',
    label: 'at most',
    unit: 'share',
    default: HARVEST_PRACTICE.maximumFraction,
    minimum: 0.05,
    maximum: 0.5,
    source: commonPractice('never more than half'),
  },
  floorPerMl: {
    type: 'number',
    label: 'density not to go under',
    unit: 'per_mL',
    default: 50,
    minimum: 0,
    maximum: 5000,
    source: commonPractice('the thin end of an inoculum, 50-150 per mL (ICAR e-course on rotifers), as a floor'),
  },
  countedWithinDays: {
    type: 'number',
    label: 'since the count at most',
    unit: 'days',
    default: 2,
    minimum: 0,
    maximum: 14,
    source: commonPractice('no harvest on an old count'),
  },
  restGoesTo: {
    type: 'choice',
    label: 'what nobody eats goes to',
    choices: ['drain', 'other_fish', 'chilled_reserve'] as const,
    default: 'other_fish' as const,
    source: commonPractice('surplus feeds other fish'),
  },
} satisfies Parameters

export type HarvestPlan = {
  /** What is still to be taken today, to a jug's mark; 0 when nothing is. */
  litres: number
  /** What the whole day stands for. */
  dayL: number
  takenToday: FactOf<'harvest'>[]
  density: CultureDensity
  outlook: CultureOutlook
  advice: HarvestAdvice
}
export type NoHarvest = {
  litres: 0
  why: 'not-a-rotifer-culture' | 'left-alone' | 'off' | 'no-density' | 'count-first' | 'falling'
}

// Enough for a lower decile to the percent or so that a jug can follow; a day of many cultures stays quick.
const futures = 200
// Forecasts are remembered by everything they depend on, so that a day that is worked out again costs no new draws.
const advices = rememberedByContent<HarvestAdvice>(1000)
// A remainder under a tenth of the day's harvest is a jug's error, not a task. common practice
const worthTaking = 0.1

const remembered = rememberedBySnapshot<HarvestPlan | NoHarvest>()

/** What one day may take from a culture, before and after what has been taken already. Shared by every rule that asks. */
export function harvestPlan(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay) {
  return remembered(snapshot, `${culture.id} ${day.date}`, () => workOut(snapshot, culture, day))
}

function workOut(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): HarvestPlan | NoHarvest {
  const rule = ruleInForce(snapshot, { id: rotiferHarvestId, isOnByDefault: true, parameters: harvestParameters })
  if (culture.kind !== 'rotifer') return { litres: 0, why: 'not-a-rotifer-culture' }
  if (!rule.isOn) return { litres: 0, why: 'off' }
  if (culture.isBackup) return { litres: 0, why: 'left-alone' }
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
  if (isFallingByCounts(outlook.record)) return { litres: 0, why: 'falling' }
  const takenL = takenToday.reduce((sum, fact) => sum + fact.data.volumeL, 0)
  const advice = adviceFor({ snapshot, culture, outlook, density, parameters: rule.parameters, day })
  const wholeDayL = Math.min(advice.shareOfVolume * culture.volumeL, rule.parameters.mostShare * culture.volumeL)
  const leftL = Math.max(0, wholeDayL - takenL)
  const isWorth = leftL > worthTaking * Math.max(wholeDayL, 0.1)
  return {
    litres: isWorth ? measurableLDown(leftL) : 0,
    dayL: wholeDayL,
    takenToday,
    density,
    outlook,
    advice,
  }
}

function adviceFor(input: {
  snapshot: RoomSnapshot
  culture: SnapshotCulture
  outlook: CultureOutlook
  density: CultureDensity
  parameters: ParameterValues<typeof harvestParameters>
  day: HusbandryDay
}): HarvestAdvice {
  const { snapshot, culture, outlook, density, parameters, day } = input
  const startedOn = localDate({ timeZone: snapshot.room.timeZone, at: outlook.record.startedAt })
  const harvests = outlook.record.removals.filter(({ fact }) => fact.kind === 'harvest')
  const dependsOn = [
    cultureHistory(outlook.record, culture),
    outlook.estimate.day,
    culture.volumeL,
    density.densityPerMl,
    startedOn,
    day.date,
    parameters,
  ]
  return advices(dependsOn, () => {
    const forecast = forecastCulture({
      estimate: outlook.estimate,
      plan: { harvestFractionPerDay: parameters.dailyShare },
      days: HARVEST_PRACTICE.horizonDays,
      seed: 1,
      futures,
    })
    return harvestAdvice({
      estimate: outlook.estimate,
      forecast,
      volumeL: culture.volumeL,
      ageDays: Math.max(0, daysBetween(startedOn, day.date)),
      densityPerMl: density.densityPerMl,
      isFirstHarvest: harvests.length === 0,
      floorPerMl: parameters.floorPerMl,
      firstHarvestPerMl: parameters.firstHarvestPerMl,
      firstHarvestAgeDays: parameters.firstHarvestAgeDays,
      usualFraction: parameters.dailyShare,
      maximumFraction: parameters.mostShare,
    })
  })
}
