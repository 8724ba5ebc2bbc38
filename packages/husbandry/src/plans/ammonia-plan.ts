import { unionisedAmmoniaNitrogen } from '@fryward/seawater'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { type DayRound, roundsInOrder } from '../calendar/rounds.ts'
import { larvalAmmoniaActDefinition } from '../definitions/larvae/larval-ammonia-act.ts'
import type { FactOf } from '../facts/fact.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { factsUntil } from '../state/day-facts.ts'
import { larvalDiet } from '../state/larval-diet.ts'
import { readBeside, type WaterRead } from '../state/water-reads.ts'

// Sea water where no pH was read: on the high side of 7.8-8.3, so that the poisonous part is not underrated. from memory
export const assumedPH = 8.2
// Where the ammonia formulas hold (seawater).
const ammoniaC = { from: 0, to: 40 }

/** A test that read ammonia: the total, and the poisonous part of it, both as N. */
export type AmmoniaTest = {
  fact: FactOf<'water_test'>
  totalMgPerL: number
  nh3MgPerL: number
  /** What gauges read beside the test, where it left it out. */
  beside: { pH: WaterRead | null; temperatureC: WaterRead | null }
}

/** The last water test of a tank that read its ammonia, up to the end of a day, by its own pH and warmth, or what gauges read beside it. */
export function lastAmmoniaTest(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): AmmoniaTest | null {
  const fact = factsUntil(snapshot, 'water_test', { subjectId: tank.id, until: day.endsAt }).findLast(
    ({ data }) => data.totalAmmoniaNMgPerL !== undefined,
  )
  const totalMgPerL = fact?.data.totalAmmoniaNMgPerL
  if (!fact || totalMgPerL === undefined) return null
  const about = { subjectId: tank.id, at: fact.at }
  const beside = {
    pH: fact.data.pH === undefined ? readBeside(snapshot, 'pH', about) : null,
    temperatureC: fact.data.temperatureC === undefined ? readBeside(snapshot, 'temperatureC', about) : null,
  }
  const pH = fact.data.pH ?? beside.pH?.value
  const temperatureC = fact.data.temperatureC ?? beside.temperatureC?.value
  return {
    fact,
    totalMgPerL,
    beside,
    nh3MgPerL: totalMgPerL > 0 ? totalMgPerL * poisonousShare(tank, { pH, temperatureC }) : 0,
  }
}

/** The part of total ammonia (as N) that is poisonous, in this tank's water. */
function poisonousShare(
  tank: SnapshotTank,
  read: { pH?: number | undefined; temperatureC?: number | undefined },
): number {
  return unionisedAmmoniaNitrogen({
    totalAmmoniaNitrogenMgPerL: 1,
    pH: read.pH ?? assumedPH,
    temperatureC: Math.min(ammoniaC.to, Math.max(ammoniaC.from, read.temperatureC ?? tank.temperatureC)),
    salinity: tank.salinity,
  })
}

/** How a room acts on ammonia. */
export const ammoniaActInForce = (snapshot: RoomSnapshot) => ruleInForce(snapshot, larvalAmmoniaActDefinition)

/** Total ammonia (as N) from which a room acts, in this tank's water at the pH that is assumed where none is read. */
export const totalToActOn = (snapshot: RoomSnapshot, tank: SnapshotTank): number =>
  ammoniaActInForce(snapshot).parameters.actMgPerL / poisonousShare(tank, {})

/**
 * Whether larvae want a sponge filter: they are old enough for Artemia, by when they swim clear of one (common practice), none runs
 * in their tank, and the last test read more than is to be left.
 */
export function wantsSponge(
  snapshot: RoomSnapshot,
  { tank, batch, day }: { tank: SnapshotTank; batch: SnapshotBatch; day: HusbandryDay },
): boolean {
  const { isOn, parameters } = ammoniaActInForce(snapshot)
  const diet = larvalDiet(batch, day.date)
  if (!isOn || !diet || tank.hasFilter || diet.day < diet.species.feeding.artemiaFirstDay.value) return false
  const test = lastAmmoniaTest(snapshot, tank, day)
  return test !== null && test.nh3MgPerL > parameters.watchMgPerL
}

/** The first change of a batch's water after an instant. */
export function changeAfter(
  snapshot: RoomSnapshot,
  of: { tank: SnapshotTank; batch: SnapshotBatch; at: string; day: HusbandryDay },
): FactOf<'water_change'> | undefined {
  return [of.tank.id, of.batch.id]
    .flatMap((subjectId) => factsUntil(snapshot, 'water_change', { subjectId, until: of.day.endsAt }))
    .filter(({ at, data }) => at > of.at && data.removedL > 0)
    .sort((a, b) => (a.at < b.at ? -1 : 1))[0]
}

export type Retest = { round: DayRound; change: FactOf<'water_change'> }

/** The round in which water that was changed against ammonia is tested again: the next one after the change. */
export function ammoniaRetest(
  snapshot: RoomSnapshot,
  of: { tank: SnapshotTank; batch: SnapshotBatch; day: HusbandryDay },
): Retest | null {
  const { isOn, parameters } = ammoniaActInForce(snapshot)
  const test = lastAmmoniaTest(snapshot, of.tank, of.day)
  if (!isOn || !test || test.nh3MgPerL < parameters.actMgPerL) return null
  const change = changeAfter(snapshot, { ...of, at: test.fact.at })
  const round = change && roundsInOrder(of.day).find(({ startsAt }) => startsAt > change.at)
  return round ? { round, change } : null
}
