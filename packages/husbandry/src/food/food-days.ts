import type { PlainDate } from '@fryward/shared'
import { addDays, type HusbandryDay, husbandryDay } from '../calendar/husbandry-day.ts'
import type { RoomSnapshot } from '../snapshot/room-snapshot.ts'

/** The days that are looked at, from today on, and in how many futures. */
export type FoodHorizon = { today: PlainDate; days: number; futures: number }

export const dateOnDay = ({ today }: FoodHorizon, day: number): PlainDate => addDays(today, day)
export const dayAhead = (snapshot: RoomSnapshot, horizon: FoodHorizon, day: number): HusbandryDay =>
  husbandryDay({ room: snapshot.room, date: dateOnDay(horizon, day) })

/** A value for each day of a horizon. */
export const eachDay = <T>({ days }: Pick<FoodHorizon, 'days'>, valueOn: (day: number) => T): T[] =>
  Array.from({ length: days }, (_, day) => valueOn(day))
