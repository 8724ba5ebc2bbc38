import { type EggLookLack, eggLookLacks } from '@fryward/shared'
import type { HusbandryDay } from '../calendar/husbandry-day.ts'
import { addDays } from '../calendar/husbandry-day.ts'
import { type DayRound, firstRound, roundsInOrder } from '../calendar/rounds.ts'
import type { RoomSnapshot, SnapshotPair, SnapshotTank } from '../snapshot/room-snapshot.ts'
import { careOf } from '../species/index.ts'
import { tankOf } from '../state/larval-diet.ts'
import { litDay } from '../state/tank-light.ts'
import { hasNaupliiFor } from './copepod-plan.ts'
import { growOutAhead } from './grow-out-room.ts'
import { clutchesToRaise, spareLarvalTank } from './hatch-tank-plan.ts'

export const hasFloatingEggs = (pair: Pick<SnapshotPair, 'species'>): boolean => careOf(pair) === 'pelagic'

/**
 * The tank for one more evening's floating eggs, and what a room lacks for them: fish that spawn every evening are looked at only
 * while it lacks nothing. A room without a larval tank or grow-out has not said what it has, and is asked all the same.
 */
export function placeForFloating(
  snapshot: RoomSnapshot,
  day: HusbandryDay,
): { lacks: EggLookLack[]; tank: SnapshotTank | null } {
  const tank = spareLarvalTank(snapshot, day)
  const ahead = growOutAhead(snapshot)
  const isFull = ahead !== null && ahead.room <= ahead.coming
  const hasTanks = snapshot.tanks.some(({ kind }) => kind === 'larval')
  // Eggs that were collected hatch before these do.
  const eggs = clutchesToRaise(snapshot, day).filter(({ care }) => care === 'pelagic').length
  const isFed = tank === null || hasNaupliiFor(snapshot, (1 + eggs) * tank.volumeL, day)
  const lacks = {
    larval_tank: tank === null && hasTanks,
    grow_out: isFull,
    nauplii: !isFed,
  } satisfies Record<EggLookLack, boolean>
  return { lacks: eggLookLacks.filter((lack) => lacks[lack]), tank }
}

/** When the lights went off over a pair, on a day and on the one before: fish that spawn into open water do so about then. common practice */
export const dusksOf = (snapshot: RoomSnapshot, pair: SnapshotPair, { date }: HusbandryDay) => ({
  today: litDay(snapshot, tankOf(snapshot, pair), date).lightsOffAt,
  yesterday: litDay(snapshot, tankOf(snapshot, pair), addDays(date, -1)).lightsOffAt,
})

/** The round in which floating eggs are collected: the first after dark, before a pump has them; else the next morning's. */
export const collectingRound = (snapshot: RoomSnapshot, pair: SnapshotPair, day: HusbandryDay): DayRound =>
  roundsInOrder(day).find(({ startsAt }) => startsAt >= dusksOf(snapshot, pair, day).today) ?? firstRound(day)
