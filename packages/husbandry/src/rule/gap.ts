/** Something the room has not told us yet; shown on the day's list with what to do about it. */
export class Gap extends Error {
  override name = 'Gap'
}
