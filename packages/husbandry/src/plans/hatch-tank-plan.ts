import type { Id, PlainDate } from '@fryward/shared'
import { addDays, type HusbandryDay } from '../calendar/husbandry-day.ts'
import { clutchReadyDefinition } from '../definitions/broodstock/clutch-ready.ts'
import { Gap } from '../rule/gap.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { clutchById } from '../snapshot/by-id.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotClutch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { livingBatches } from '../state/batch-state.ts'
import { lastCare } from '../state/care.ts'
import { type ClutchOutlook, chanceOfNights, clutchOutlook } from '../state/clutch-outlook.ts'
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
    .filter((tank) => tank.kind === 'larval' && !livingBatches(snapshot).some(({ tankId }) => tankId === tank.id))
    .sort((a, b) => a.name.localeCompare(b.name, 'en') || (a.id < b.id ? -1 : 1))
}

/** A clutch that a tank is to be ready for, as likely as the room wants it; null when that is not asked or done. */
export function readyingDue(snapshot: RoomSnapshot, clutchId: string, day: HusbandryDay): ToRaise | null {
  const { isOn } = ruleInForce(snapshot, clutchReadyDefinition)
  const found = isOn ? toRaise(snapshot, clutchId, day) : null
  return found && isLikely(snapshot, found, day.date, day) && !readiedAt(snapshot, clutchId, day) ? found : null
}

/** Whether the nights from one to the last that a tank is readied for are together as likely as the room wants it. */
function isLikely(snapshot: RoomSnapshot, { outlook }: ToRaise, from: PlainDate, day: HusbandryDay): boolean {
  const { daysAhead, fromChance } = ruleInForce(snapshot, clutchReadyDefinition).parameters
  return chanceOfNights(outlook, { from, to: addDays(day.date, daysAhead) }) >= fromChance
}

const readiedAt = (snapshot: RoomSnapshot, subjectId: Id, day: HusbandryDay): string | undefined =>
  lastCare(snapshot, 'ready_hatch_tank', { subjectId, day })?.at

/** A clutch with a decision, about which nothing is missing that its own tasks ask for. */
function decidedOrNull(snapshot: RoomSnapshot, id: Id, day: HusbandryDay): ToRaise | null {
  try {
    const found = toRaise(snapshot, id, day)
    return found?.isDecided ? found : null
  } catch (error) {
    if (error instanceof Gap) return null
    throw error
  }
}

/** Clutches still in the nest that somebody has decided to raise. */
export const clutchesToRaise = (snapshot: RoomSnapshot, day: HusbandryDay): SnapshotClutch[] =>
  snapshot.clutches.filter(({ id }) => decidedOrNull(snapshot, id, day) !== null)

/** Clutches to be raised that are at least so likely to hatch in a night, if they did not before. */
export function likelyInNight(snapshot: RoomSnapshot, night: HusbandryDay, fromChance: number): ToRaise[] {
  return snapshot.clutches.flatMap(({ id }) => {
    const found = decidedOrNull(snapshot, id, night)
    return found && found.outlook.tonight >= fromChance ? [found] : []
  })
}

const remembered = rememberedBySnapshot<SnapshotClutch[]>()

/** Clutches that a tank was readied for or soon will be: the first readied first, then the older eggs. */
function awaitedClutches(snapshot: RoomSnapshot, day: HusbandryDay): SnapshotClutch[] {
  // In the morning nobody has seen yet what last night brought.
  const lastNight = addDays(day.date, -1)
  return remembered(snapshot, day.date, () =>
    snapshot.clutches
      .flatMap((clutch) => {
        const found = decidedOrNull(snapshot, clutch.id, day)
        const readied = readiedAt(snapshot, clutch.id, day)
        if (!found || (readied === undefined && !isLikely(snapshot, found, lastNight, day))) return []
        return [{ clutch, order: `${readied ?? 'later'} ${clutch.spawnedAt} ${clutch.id}` }]
      })
      .sort((a, b) => (a.order < b.order ? -1 : 1))
      .map(({ clutch }) => clutch),
  )
}

/**
 * The empty larval tank that a clutch may hatch into: one for each that is awaited, in their order. Where tanks are too
 * few, one of another clutch of its species, for their larvae may grow up together; else null.
 */
export function hatchTankFor(snapshot: RoomSnapshot, clutch: SnapshotClutch, day: HusbandryDay): SnapshotTank | null {
  const tanks = freeLarvalTanks(snapshot)
  const awaited = awaitedClutches(snapshot, day)
  const place = awaited.findIndex(({ id }) => id === clutch.id)
  const own = tanks[place < 0 ? awaited.length : place]
  const shared = awaited.findIndex(({ id, species }) => id !== clutch.id && species === clutch.species)
  return own ?? tanks[shared] ?? null
}

/** The empty larval tank that more eggs may be collected for: one that no clutch to be raised will want; null where none is. */
export const spareLarvalTank = (snapshot: RoomSnapshot, day: HusbandryDay): SnapshotTank | null => {
  const tanks = freeLarvalTanks(snapshot)
  return tanks.length > clutchesToRaise(snapshot, day).length
    ? (tanks[awaitedClutches(snapshot, day).length] ?? null)
    : null
}

/** Tanks that a day asks to be filled for larvae; each once, and none that was or is filled for another clutch before. */
export function tanksToReady(
  snapshot: RoomSnapshot,
  { today, tomorrow }: { today: HusbandryDay; tomorrow: HusbandryDay },
): SnapshotTank[] {
  if (!ruleInForce(snapshot, clutchReadyDefinition).isOn) return []
  const [before, then] = [awaitedClutches(snapshot, today), awaitedClutches(snapshot, tomorrow)]
  const filled = new Set(before.map((clutch) => hatchTankFor(snapshot, clutch, today)?.id))
  const tanks = then.flatMap((clutch) => hatchTankFor(snapshot, clutch, tomorrow) ?? [])
  return [...new Set(tanks)].filter(({ id }) => !filled.has(id))
}
