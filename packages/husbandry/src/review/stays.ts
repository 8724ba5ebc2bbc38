import type { Id, PlainDate } from '@fryward/shared'
import { dateIn, type ReviewRoom } from './review-room.ts'

type Housed = { id: Id; tankId: Id }
type Asked = Pick<ReviewRoom, 'stays' | 'timeZone'>

const staysOf = ({ stays }: Asked, { id }: Housed) => stays.filter(({ subjectId }) => subjectId === id)

/**
 * The tank that a pair or a batch was in at the end of a date, as last written down by then. What was put right on the same day
 * was a slip; before anything was written it was where it was first said to be, and without a word it is where it is now.
 */
export function tankOn(room: Asked, thing: Housed, date: PlainDate): Id {
  const stays = staysOf(room, thing)
  const then = stays.findLast(({ since }) => dateIn(room, since) <= date)
  return (then ?? stays[0] ?? thing).tankId
}

/** The tanks that it was in from the end of one date to that of another, in order, each once. */
export function tanksBetween(room: Asked, thing: Housed, { from, to }: { from: PlainDate; to: PlainDate }): Id[] {
  const moves = staysOf(room, thing).map(({ since }) => dateIn(room, since))
  const dates = [from, ...moves.filter((date) => date > from && date <= to)]
  return [...new Set(dates.map((date) => tankOn(room, thing, date)))]
}
