import type { Room } from '@fryward/shared'

/** How a room is spoken to: its units, the way its people write numbers and dates, and its clock. A room is one. */
export type Voice = Pick<Room, 'units' | 'locale' | 'timeZone'>
/** Where no clock is read. */
export type UnitVoice = Pick<Voice, 'units' | 'locale'>
export type NumberVoice = Pick<Voice, 'locale'>
