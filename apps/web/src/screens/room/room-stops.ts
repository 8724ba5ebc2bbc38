import type { Station } from '@fryward/shared'
import type { Thing } from '@/parts/things/use-things.ts'

type Line = { thing: Thing; note: string; open: number }

/** A vessel of the room; for a tank, with those who live in it (undefined where nobody could). */
export type RoomCard = Line & {
  station: Station
  figure?: string | undefined
  inhabitants?: Line[] | undefined
}
export type Stop = { station: Station; cards: RoomCard[] }

/** The cards at their stations, in the order this room is walked; stations without any are left out. */
export const toStops = (cards: RoomCard[], order: readonly Station[]): Stop[] =>
  order
    .map((station) => ({ station, cards: cards.filter((card) => card.station === station) }))
    .filter((stop) => stop.cards.length > 0)
