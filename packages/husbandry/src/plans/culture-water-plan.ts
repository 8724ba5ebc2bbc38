import { type CultureHealthInput, cultureHealth } from '@fryward/live-feed'
import { unionisedAmmoniaNitrogen } from '@fryward/seawater'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, middleRound, roundsInOrder } from '../calendar/rounds.ts'
import { cultureWaterTestDefinition } from '../definitions/live-food/culture-water-test.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotCulture } from '../snapshot/room-snapshot.ts'
import { standsEmpty } from '../state/culture-history.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'
import { type Measure, readBeside } from '../state/water-reads.ts'
import { assumedPH } from './ammonia-plan.ts'

// NH3 weighs 17.03 where its nitrogen weighs 14.007.
const nh3PerN = 17.03 / 14.007
// Where the ammonia formulas hold (seawater).
const ammoniaC = { from: 0, to: 40 }

export type CultureWater = {
  fact: FactOf<'water_test'>
  /** What culture-health reads of it: un-ionised ammonia as NH3, oxygen, pH. */
  read: Pick<CultureHealthInput, 'nh3MgL' | 'oxygenMgL' | 'pH'>
  /** The first change of its water since. */
  change: FactOf<'water_change'> | null
}

/** A culture's last water test; null when its water was never tested. */
export function cultureWater(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): CultureWater | null {
  const about = { subjectId: culture.id, until: day.endsAt }
  const fact = factsUntil(snapshot, 'water_test', about).at(-1)
  if (!fact) return null
  const beside = (measure: Measure) => readBeside(snapshot, measure, { subjectId: culture.id, at: fact.at })?.value
  const pH = fact.data.pH ?? beside('pH')
  const oxygenMgL = fact.data.oxygenMgPerL ?? beside('oxygenMgPerL')
  const temperatureC = fact.data.temperatureC ?? beside('temperatureC')
  const nh3MgL = nh3Of(culture, { ...fact.data, pH, temperatureC })
  const change = factsUntil(snapshot, 'water_change', about).find(({ at, data }) => at > fact.at && data.removedL > 0)
  return {
    fact,
    read: {
      ...(nh3MgL === undefined ? {} : { nh3MgL }),
      ...(oxygenMgL === undefined ? {} : { oxygenMgL }),
      ...(pH === undefined ? {} : { pH }),
    },
    change: change ?? null,
  }
}

function nh3Of(culture: SnapshotCulture, data: FactOf<'water_test'>['data']): number | undefined {
  if (data.totalAmmoniaNMgPerL === undefined) return undefined
  if (data.totalAmmoniaNMgPerL === 0) return 0
  const nitrogen = unionisedAmmoniaNitrogen({
    totalAmmoniaNitrogenMgPerL: data.totalAmmoniaNMgPerL,
    pH: data.pH ?? assumedPH,
    temperatureC: Math.min(ammoniaC.to, Math.max(ammoniaC.from, data.temperatureC ?? culture.temperatureC)),
    salinity: data.salinity ?? culture.salinity,
  })
  return Math.min(100, nitrogen * nh3PerN)
}

/** A culture's last water test when it is of today or yesterday. */
function lateTest(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): CultureWater | null {
  const water = cultureWater(snapshot, culture, day)
  const age = daysSince(snapshot, water?.fact, day.date)
  return water && age !== null && age <= 1 ? water : null
}

/** What still speaks against a culture's water: a test of today or yesterday, and no change of it since. */
export function waterAgainst(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): CultureWater | null {
  const water = lateTest(snapshot, culture, day)
  return water?.change ? null : water
}

const isWrong = ({ read }: CultureWater): boolean => cultureHealth(read).reasons.some(({ grade }) => grade === 'act')

/** The test of today or yesterday that found a culture's water wrong, until another finds it sound. */
export function wrongWater(snapshot: RoomSnapshot, culture: SnapshotCulture, day: HusbandryDay): CultureWater | null {
  const water = lateTest(snapshot, culture, day)
  return water && isWrong(water) ? water : null
}

export type CultureTest = { round: DayRound; last: CultureWater | null; isRetest: boolean }

/** The test of a culture's water that a day asks for; null when none is due. */
export function cultureTestDue(
  snapshot: RoomSnapshot,
  culture: SnapshotCulture,
  day: HusbandryDay,
): CultureTest | null {
  const { isOn, parameters } = ruleInForce(snapshot, cultureWaterTestDefinition)
  if (!isOn || culture.kind !== 'rotifer' || culture.startedAt >= day.startsAt) return null
  if (standsEmpty(snapshot, culture, day.endsAt)) return null
  const last = cultureWater(snapshot, culture, day)
  const since = daysSince(snapshot, last?.fact, day.date)
  if (!last || since === null) return { round: middleRound(day), last, isRetest: false }
  const wasWrong = isWrong(last)
  const changedAt = wasWrong ? last.change?.at : undefined
  const next = changedAt && roundsInOrder(day).find(({ startsAt }) => startsAt > changedAt)
  if (next) return { round: next, last, isRetest: true }
  if (wasWrong && since >= 1) return { round: roundsInOrder(day)[0]!, last, isRetest: true }
  return since >= parameters.everyDays ? { round: middleRound(day), last, isRetest: false } : null
}
