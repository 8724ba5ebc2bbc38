import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { hoursByLight } from '../calendar/light.ts'
import { preyFeedRounds, topUpInForce } from '../plans/prey-feed-rounds.ts'
import type { RoomSnapshot, SnapshotBatch, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { eatenPerLarvaPerHour, grazingOf } from '../state/grazing.ts'
import { tankOf } from '../state/larval-diet.ts'
import { litRoom } from '../state/tank-light.ts'

/** What a day of rotifers is worked out from. */
export type RotiferHabits = {
  targetPerMl: number
  refillUnderPerMl: number
  mostPerMl: number
  mostWhenEatenPerMl: number
  feedsPerDay: number
  sievingLoss: number
}

/** How the room feeds rotifers on a day in a tank; null where it feeds none. */
export function rotiferHabits(
  snapshot: RoomSnapshot,
  tank: SnapshotTank | undefined,
  day: HusbandryDay,
): RotiferHabits | null {
  const { isOn, parameters } = topUpInForce(snapshot)
  if (!isOn) return null
  return { ...parameters, feedsPerDay: preyFeedRounds(snapshot, tank, day).length }
}

/** Rotifers that one larva eats in a day by a batch's own counts, and how far that may be off; null without counts. */
export type Appetite = { perLarvaPerDay: number; logSd: number }

// Where nothing was counted, a day's food is what the top-up expects to be gone at each feed. How far that is off: assumption
const uncountedLogSd = 0.3
const normal95 = 1.96

export function appetiteOf(snapshot: RoomSnapshot, batch: SnapshotBatch, day: HusbandryDay): Appetite | null {
  const tank = tankOf(snapshot, batch)
  const grazing = tank && grazingOf(snapshot, { batch, tank, prey: 'rotifers', until: day.endsAt })
  if (!grazing) return null
  const hours = hoursByLight(litRoom(snapshot, tank), { from: day.startsAt, to: day.endsAt })
  const perLarvaPerDay = eatenPerLarvaPerHour(grazing, hours) * (hours.light + hours.dark)
  const { upperPerLarvaPerHour, eatenPerLarvaPerHour: mean } = grazing.light ?? grazing.dark!
  if (perLarvaPerDay <= 0 || mean <= 0) return null
  return { perLarvaPerDay, logSd: Math.min(1, Math.log(upperPerLarvaPerHour / mean) / normal95) }
}

export type Mouths = {
  volumeL: number
  /** Null while nobody knows how many they are. */
  larvae: number | null
  /** The first day of food fills the tank to the target. */
  isFirstDay: boolean
  /** Of the water, what is changed on the day: its rotifers go with it. */
  changedShare: number
}

/** Live rotifers that a tank of larvae wants in a day. */
export function rotifersWanted(habits: RotiferHabits, appetite: Appetite | null, mouths: Mouths): number {
  const { targetPerMl, refillUnderPerMl, feedsPerDay } = habits
  const ml = mouths.volumeL * 1000
  const gone = Math.max(0, targetPerMl - refillUnderPerMl) * ml
  const fill = mouths.isFirstDay ? Math.min(refillUnderPerMl, targetPerMl) * ml : 0
  if (appetite === null || mouths.larvae === null) return fill + feedsPerDay * gone
  const flushed = mouths.changedShare * targetPerMl * ml
  const most = Math.max(habits.mostPerMl, habits.mostWhenEatenPerMl)
  // However hungry they are, no feed puts more into the water than it may hold.
  return fill + Math.min(mouths.larvae * appetite.perLarvaPerDay + flushed, feedsPerDay * most * ml)
}

export const doubtOf = (appetite: Appetite | null): number => appetite?.logSd ?? uncountedLogSd
