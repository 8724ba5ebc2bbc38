import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, roundsInOrder } from '../calendar/rounds.ts'
import { tankWaterActDefinition } from '../definitions/room/tank-water-act.ts'
import { tankWaterTestDefinition } from '../definitions/room/tank-water-test.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { factsOf } from '../snapshot/facts-of.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { dateOf, daysSince, factsUntil } from '../state/day-facts.ts'
import { type AmmoniaTest, lastAmmoniaTest } from './ammonia-plan.ts'

/** True when the calendar asks for a test of a tank's water: none for so many days. */
export function isTestDue(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): boolean {
  const { isOn, parameters } = ruleInForce(snapshot, tankWaterTestDefinition)
  const last = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt }).at(-1)
  const since = daysSince(snapshot, last, day.date)
  return isOn && (since === null || since >= parameters.everyDays)
}

/** What a tank's last test reads, where it is harmful: how much of it, against what it may be. */
export type HarmfulWater = {
  fact: FactOf<'water_test'>
  of: 'ammonia' | 'nitrite'
  mgPerL: number
  limitMgPerL: number
  ammonia: AmmoniaTest | null
  /** The week's change, made as it was read: what is harmful is left after it. */
  change: FactOf<'water_change'> | undefined
}

/** The harmful reading of a tank's last test, the worse of the two by its limit; null when it is safe or none was read. */
export function harmfulWater(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): HarmfulWater | null {
  const { isOn, parameters } = ruleInForce(snapshot, tankWaterActDefinition)
  if (!isOn) return null
  const ammonia = lastAmmoniaTest(snapshot, tank, day)
  const nitrite = lastNitrite(snapshot, tank, day)
  const found: Omit<HarmfulWater, 'change'>[] = [
    ...(ammonia
      ? [
          {
            ...{ fact: ammonia.fact, of: 'ammonia' as const, ammonia },
            ...{ mgPerL: ammonia.nh3MgPerL, limitMgPerL: parameters.ammoniaMgPerL },
          },
        ]
      : []),
    ...(nitrite ? [{ ...nitrite, of: 'nitrite' as const, limitMgPerL: parameters.nitriteMgPerL, ammonia: null }] : []),
  ]
  return (
    found
      .map((read) => afterChange(snapshot, tank, read))
      .filter(({ mgPerL, limitMgPerL }) => mgPerL >= limitMgPerL)
      .sort((a, b) => b.mgPerL / b.limitMgPerL - a.mgPerL / a.limitMgPerL)[0] ?? null
  )
}

/** The test was of the old water where a change took it along. */
function afterChange(snapshot: RoomSnapshot, tank: SnapshotTank, read: Omit<HarmfulWater, 'change'>): HarmfulWater {
  const change = factsOf(snapshot, 'water_change', tank.id).find(({ at }) => at === read.fact.at)
  const kept = change ? Math.max(0, 1 - change.data.removedL / tank.volumeL) : 1
  return { ...read, mgPerL: read.mgPerL * kept, change }
}

function lastNitrite(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay) {
  const fact = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt }).findLast(
    ({ data }) => data.nitriteNMgPerL !== undefined,
  )
  return fact ? { fact, mgPerL: fact.data.nitriteNMgPerL ?? 0 } : null
}

/** The first change of a tank's water after an instant. */
export const tankChangeAfter = (snapshot: RoomSnapshot, of: { tank: SnapshotTank; at: string; day: HusbandryDay }) =>
  factsUntil(snapshot, 'water_change', { subjectId: of.tank.id, until: of.day.endsAt }).find(
    ({ at, data }) => at > of.at && data.removedL > 0,
  )

/**
 * The round in which a tank is tested out of turn: the next after water was changed against what was read, or any round of a
 * day that follows one on which ammonia or nitrite was left. Null when the calendar alone says.
 */
export function tankRetest(
  snapshot: RoomSnapshot,
  of: { tank: SnapshotTank; day: HusbandryDay },
): { round: DayRound; change: FactOf<'water_change'> | null } | null {
  const { isOn, parameters } = ruleInForce(snapshot, tankWaterActDefinition)
  if (!isOn) return null
  const rounds = roundsInOrder(of.day)
  const harmful = harmfulWater(snapshot, of.tank, of.day)
  const change = harmful && tankChangeAfter(snapshot, { ...of, at: harmful.fact.at })
  const after = change && rounds.find(({ startsAt }) => startsAt > change.at)
  if (change && after) return { round: after, change }
  const ammonia = lastAmmoniaTest(snapshot, of.tank, of.day)
  const nitrite = lastNitrite(snapshot, of.tank, of.day)
  const isWatched = (measure: Watched) => harmful !== null || !isSteady(snapshot, { ...of, measure })
  const left = [
    ammonia && ammonia.nh3MgPerL >= parameters.ammoniaMgPerL / 2 && isWatched('totalAmmoniaNMgPerL')
      ? ammonia.fact
      : null,
    nitrite && nitrite.mgPerL >= parameters.watchNitriteMgPerL && isWatched('nitriteNMgPerL') ? nitrite.fact : null,
  ].find((fact) => fact !== null && (daysSince(snapshot, fact, of.day.date) ?? 0) >= 1)
  return left ? { round: rounds[0]!, change: change ?? null } : null
}

type Watched = 'totalAmmoniaNMgPerL' | 'nitriteNMgPerL'

/** Read on so many days and no higher: what feeds it and what takes it away are even, and the calendar's tests will do. */
function isSteady(
  snapshot: RoomSnapshot,
  { tank, day, measure }: { tank: SnapshotTank; day: HusbandryDay; measure: Watched },
): boolean {
  const { steadyDays } = ruleInForce(snapshot, tankWaterActDefinition).parameters
  const tests = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt })
  const byDay = new Map(
    tests.flatMap(({ at, data }) => (data[measure] === undefined ? [] : [[dateOf(snapshot, at), data[measure]]])),
  )
  const reads = [...byDay.values()].slice(-steadyDays)
  return reads.length === steadyDays && Math.max(...reads) <= reads[0]!
}
