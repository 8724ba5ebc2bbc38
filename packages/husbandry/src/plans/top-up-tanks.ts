import { freshWaterToAddL } from '@fryward/seawater'
import { type Station, stationOfTank } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { tankTopUpDefinition } from '../definitions/room/tank-top-up.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'
import { holdsFish } from '../state/tank-fish.ts'
import { type WaterRead, waterReads } from '../state/water-reads.ts'
import { measurableL } from '../task/measures.ts'
import { tankChange } from './tank-change-plan.ts'

export type SalinityReading = { fact: WaterRead['fact']; salinity: number }
export type TankTopUp = {
  tank: SnapshotTank
  reading: SalinityReading | null
  /** To a jug's mark; null where nothing was read, and the tank's own mark says. */
  plannedL: number | null
}

/**
 * The tanks of a station that are filled up to their marks on one walk, in order of name: those that are due, and those
 * that would be tomorrow. None while none is due; a change of water brings a tank to its mark too.
 */
export function tanksToTopUp(snapshot: RoomSnapshot, of: SnapshotTank, day: HusbandryDay): TankTopUp[] {
  const station = stationOfTank[of.kind]
  return remembered(snapshot, `${station} ${day.date}`, () => workOut(snapshot, station, day))
}

const remembered = rememberedBySnapshot<TankTopUp[]>()

function workOut(snapshot: RoomSnapshot, station: Station, day: HusbandryDay): TankTopUp[] {
  const { everyDays } = ruleInForce(snapshot, tankTopUpDefinition).parameters
  const asked = snapshot.tanks
    .filter((tank) => stationOfTank[tank.kind] === station && tank.salinity > 0)
    .filter((tank) => holdsFish(snapshot, tank, day) && !tankChange(snapshot, tank, day))
    .map((tank) => ({ ...topUpOf(snapshot, tank, day), since: sinceWaterIn(snapshot, tank, day) }))
    // A salinity at its mark says that nothing is missing.
    .filter(({ plannedL }) => plannedL !== 0)
  if (!asked.some(({ since }) => since >= everyDays)) return []
  return asked
    .filter(({ since }) => since >= Math.max(1, everyDays - 1))
    .sort((a, b) => a.tank.name.localeCompare(b.tank.name, 'en') || (a.tank.id < b.tank.id ? -1 : 1))
}

function lastWaterIn(snapshot: RoomSnapshot, { id }: SnapshotTank, day: HusbandryDay) {
  return factsUntil(snapshot, 'water_change', { subjectId: id, until: day.endsAt }).at(-1)
}

const sinceWaterIn = (snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): number =>
  daysSince(snapshot, lastWaterIn(snapshot, tank, day), day.date) ?? Number.POSITIVE_INFINITY

function topUpOf(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): TankTopUp {
  const reading = readingOf(snapshot, tank, day)
  return { tank, reading, plannedL: reading && evaporatedL(tank, reading.salinity) }
}

/** The salinity read lately, and since water last went in; null when there is none. */
function readingOf(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): SalinityReading | null {
  const { readWithinDays } = ruleInForce(snapshot, tankTopUpDefinition).parameters
  const read = waterReads(snapshot, 'salinity', { subjectId: tank.id, until: day.endsAt }).at(-1)
  const ageDays = daysSince(snapshot, read, day.date)
  if (!read || ageDays === null || ageDays > readWithinDays) return null
  const lastIn = lastWaterIn(snapshot, tank, day)
  // A mean of a gauge that began before the water went in is of both waters.
  const since = read.fact.kind === 'water_reading' ? read.fact.data.from : read.at
  return lastIn && since <= lastIn.at ? null : { fact: read.fact, salinity: read.value }
}

/** Fresh water that brings a tank back to its salinity, to a jug's mark; a quarter of the tank at most. */
function evaporatedL(tank: SnapshotTank, salinity: number): number {
  const { volumeL, salinity: targetSalinity } = tank
  const missingL = freshWaterToAddL({ volumeL, salinity: Math.max(salinity, targetSalinity), targetSalinity })
  return measurableL(Math.min(missingL, volumeL / 4))
}
