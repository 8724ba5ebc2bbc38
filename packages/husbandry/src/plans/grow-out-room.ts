import { juvenileCountDefinition } from '../definitions/juveniles/juvenile-count.ts'
import { ruleInForce } from '../rule/rule-in-force.ts'
import type { RoomSnapshot, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { batchNumbers, livingBatches } from '../state/batch-state.ts'
import { groupNumbers } from '../state/group-state.ts'

/** Fish that a grow-out tank may still take, by its litres and those that are in it already. */
export function roomForFish(snapshot: RoomSnapshot, tank: SnapshotTank): number {
  const { fishPerL } = ruleInForce(snapshot, juvenileCountDefinition).parameters
  return Math.max(0, Math.floor(fishPerL * tank.volumeL) - fishIn(snapshot, tank))
}

/** Young of all groups that share a tank, as far as anybody has said how many they are. */
export const fishIn = (snapshot: RoomSnapshot, tank: SnapshotTank): number =>
  snapshot.groups
    .filter(({ tankId }) => tankId === tank.id)
    .reduce((sum, group) => sum + (groupNumbers(snapshot, group).now ?? 0), 0)

export type GrowOutPlace = { tank: SnapshotTank; room: number }

/**
 * Grow-out tanks for so many fish: of those that take them all a filtered one, for they will be fed, and of these the one with
 * the least room, so that a large one stays free for more; where none does, those with most room first, to be split between.
 */
export function growOutFor(snapshot: RoomSnapshot, number: number | null): GrowOutPlace[] {
  const places = snapshot.tanks
    .filter(({ kind }) => kind === 'grow_out')
    .map((tank) => ({ tank, room: roomForFish(snapshot, tank) }))
    .sort((a, b) => b.room - a.room || a.tank.name.localeCompare(b.tank.name, 'en') || (a.tank.id < b.tank.id ? -1 : 1))
  const wholes = number === null ? [] : places.filter(({ room }) => room >= number)
  const whole = wholes.findLast(({ tank }) => tank.hasFilter) ?? wholes.at(-1)
  return whole ? [whole, ...places.filter((place) => place !== whole)] : places
}

/** Room in all grow-out tanks, and the larvae that will want it before any that hatch later; null where there is no such tank. */
export function growOutAhead(snapshot: RoomSnapshot): { room: number; coming: number } | null {
  const tanks = snapshot.tanks.filter(({ kind }) => kind === 'grow_out')
  if (tanks.length === 0) return null
  return {
    room: tanks.reduce((sum, tank) => sum + roomForFish(snapshot, tank), 0),
    coming: livingBatches(snapshot).reduce((sum, batch) => sum + (batchNumbers(snapshot, batch).now ?? 0), 0),
  }
}
