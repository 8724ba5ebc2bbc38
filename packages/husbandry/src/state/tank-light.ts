import type { PlainDate, PlainTime } from '@fryward/shared'
import { type HusbandryDay, husbandryDay } from '../calendar/husbandry-day.ts'
import { larvalLightDefinition } from '../definitions/larvae/larval-light.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSettings, RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'

type Lamp = Pick<SnapshotTank, 'kind' | 'lightHours'>

/** Hours of light that a tank has a day of its own; null where it is lit as the room is. */
export function ownLightHours(snapshot: RoomSnapshot, { kind, lightHours }: Lamp): number | null {
  if (lightHours !== null) return lightHours
  return kind === 'larval' ? ruleInForce(snapshot, larvalLightDefinition).parameters.hours : null
}

export type TankLight = { hours: number; onAt: PlainTime; offAt: PlainTime }

/** How long a tank is lit a day, and from when to when. */
export function tankLight(snapshot: RoomSnapshot, tank: SnapshotTank | undefined): TankLight {
  const { lightsOnAt: onAt, lightsOffAt: offAt } = litRoom(snapshot, tank)
  const minutes = (minutesOf(offAt) - minutesOf(onAt) + minutesADay) % minutesADay
  return { hours: (minutes || minutesADay) / 60, onAt, offAt }
}

/** The room as it is lit over a tank: on when the room's lights go on, for as long as the tank has light. */
export function litRoom(snapshot: RoomSnapshot, tank: Lamp | undefined): RoomSettings {
  const hours = tank ? ownLightHours(snapshot, tank) : null
  return hours === null ? snapshot.room : litFor(snapshot.room, hours)
}

const litRooms = new WeakMap<RoomSettings, Map<number, RoomSettings>>()

/** The same object for the same hours: the days of a room are remembered by it. */
function litFor(room: RoomSettings, hours: number): RoomSettings {
  const byHours = litRooms.get(room) ?? new Map<number, RoomSettings>()
  litRooms.set(room, byHours)
  const lit = byHours.get(hours) ?? { ...room, lightsOffAt: later(room.lightsOnAt, hours) }
  byHours.set(hours, lit)
  return lit
}

/** A date by the light over a tank. */
export const litDay = (snapshot: RoomSnapshot, tank: SnapshotTank | undefined, date: PlainDate): HusbandryDay =>
  husbandryDay({ room: litRoom(snapshot, tank), date })

const minutesADay = 24 * 60

function minutesOf(time: PlainTime): number {
  const [hour = 0, minute = 0] = time.split(':').map(Number)
  return hour * 60 + minute
}

function later(time: PlainTime, hours: number): PlainTime {
  const minutes = (minutesOf(time) + Math.round(hours * 60)) % minutesADay
  return [Math.floor(minutes / 60), minutes % 60].map((part) => String(part).padStart(2, '0')).join(':')
}
