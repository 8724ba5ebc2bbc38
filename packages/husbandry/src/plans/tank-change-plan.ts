import type { Id, Instant } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { tankWaterChangeDefinition } from '../definitions/room/tank-water-change.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import { rememberedBySnapshot } from '../snapshot/remembered-by-snapshot.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { daysSince, factsUntil } from '../state/day-facts.ts'
import { holdsFish } from '../state/tank-fish.ts'
import { measurableL } from '../task/measures.ts'

type TankChangePlan = { tank: SnapshotTank; share: number; litres: number }

/** Water of a tank with grown or growing fish, by the calendar: more where no filter runs. Null when none is due. */
export const tankChange = (snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): TankChangePlan | null =>
  tankChanges(snapshot, day).find((plan) => plan.tank.id === tank.id) ?? null

const tankChanges = (snapshot: RoomSnapshot, day: HusbandryDay): TankChangePlan[] =>
  remembered(snapshot, day.date, () =>
    changesOf(snapshot, day, new Set()).filter(({ tank }) => !lastChange(snapshot, tank, day.endsAt, day.startsAt)),
  )

const remembered = rememberedBySnapshot<TankChangePlan[]>()

/** Those of tomorrow, when today’s are done today. */
export function tankChangesTomorrow(
  snapshot: RoomSnapshot,
  { today, tomorrow }: { today: HusbandryDay; tomorrow: HusbandryDay },
): TankChangePlan[] {
  const doneToday = new Set(tankChanges(snapshot, today).map(({ tank }) => tank.id))
  return changesOf(snapshot, tomorrow, doneToday)
}

/** @property lateDays null where water was never changed. */
type Due = TankChangePlan & { lateDays: number | null }

/**
 * What is due when a day begins: as much as one day takes, and whatever has waited as long as it may. Never changed goes first,
 * then the latest. What is done during the day moves nothing: water was mixed for the rest.
 */
function changesOf(snapshot: RoomSnapshot, day: HusbandryDay, done: ReadonlySet<Id>): TankChangePlan[] {
  const { isOn, parameters } = ruleInForce(snapshot, tankWaterChangeDefinition)
  if (!isOn) return []
  const due = snapshot.tanks.flatMap((tank) => (done.has(tank.id) ? [] : (dueOf(snapshot, tank, day) ?? [])))
  due.sort((a, b) => rank(b) - rank(a) || b.litres - a.litres || (a.tank.id < b.tank.id ? -1 : 1))
  let takenL = 0
  return due.filter(({ litres, lateDays }) => {
    const hasWaited = lateDays !== null && lateDays >= parameters.lateDays
    const isTaken = hasWaited || takenL === 0 || takenL + litres <= parameters.mostLitres
    if (isTaken) takenL += litres
    return isTaken
  })
}

const rank = ({ lateDays }: Due): number => lateDays ?? Number.MAX_SAFE_INTEGER

function dueOf(snapshot: RoomSnapshot, tank: SnapshotTank, day: HusbandryDay): Due | null {
  const { everyDays, share, unfilteredShare } = ruleInForce(snapshot, tankWaterChangeDefinition).parameters
  if (!holdsFish(snapshot, tank, day)) return null
  const since = daysSince(snapshot, lastChange(snapshot, tank, day.startsAt), day.date)
  if (since !== null && since < everyDays) return null
  const changed = tank.hasFilter ? share : unfilteredShare
  const lateDays = since === null ? null : since - everyDays
  return { tank, share: changed, litres: measurableL(tank.volumeL * changed), lateDays }
}

/** The last change of a tank’s water before an instant, and not before another. */
const lastChange = (snapshot: RoomSnapshot, { id }: SnapshotTank, until: Instant, from: Instant = '') =>
  factsUntil(snapshot, 'water_change', { subjectId: id, until }).findLast(
    ({ at, data }) => data.removedL > 0 && at >= from,
  )
