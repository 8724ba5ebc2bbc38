import { addDays, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { clutchReadyDefinition } from '../definitions/broodstock/clutch-ready.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { clutchById } from '../snapshot/by-id.ts'
import type { RoomSnapshot, SnapshotClutch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { standingBatches } from '../state/batch-state.ts'
import { lastCare } from '../state/care.ts'
import { type ClutchOutlook, clutchOutlook } from '../state/clutch-outlook.ts'
import { clutchIntent, clutchState } from '../state/clutch-state.ts'

export type ToRaise = { clutch: SnapshotClutch; outlook: ClutchOutlook; isDecided: boolean }

/** The clutch with its forecast, while it is to be raised, in part or whole. */
export function toRaise(snapshot: RoomSnapshot, id: string, day: HusbandryDay): ToRaise | null {
  const clutch = clutchById(snapshot, id)
  const intent = clutchIntent(snapshot, clutch)
  if (clutchState(snapshot, clutch) !== 'incubating' || intent === 'leave_with_parents') return null
  const outlook = clutchOutlook(snapshot, clutch, day)
  return { clutch, outlook, isDecided: intent !== 'undecided' }
}

/** Larval tanks without larvae, in order of name: where tonight's may go. */
export function freeLarvalTanks(snapshot: RoomSnapshot): SnapshotTank[] {
  return snapshot.tanks
    .filter((tank) => tank.kind === 'larval' && !standingBatches(snapshot).some(({ tankId }) => tankId === tank.id))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

/** A clutch that a tank is to be ready for, as likely as the room wants it; null when that is not asked or done. */
export function readyingDue(snapshot: RoomSnapshot, clutchId: string, day: HusbandryDay): ToRaise | null {
  const { isOn, parameters } = ruleInForce(snapshot, clutchReadyDefinition)
  const found = isOn ? toRaise(snapshot, clutchId, day) : null
  if (!found) return null
  const until = addDays(day.date, parameters.daysAhead)
  const chance = found.outlook.forecast.nights
    .filter(({ date }) => date >= day.date && date <= until)
    .reduce((sum, { probability }) => sum + probability, 0)
  const isReady = lastCare(snapshot, 'ready_hatch_tank', { subjectId: clutchId, day }) !== undefined
  return chance < parameters.fromChance || isReady ? null : found
}
