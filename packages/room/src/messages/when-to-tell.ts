// All of these: common practice of on-call lists, and short for water that warms by a degree in an hour.
const minuteMs = 60_000
const repeatMs = 10 * minuteMs
/** From this time on an alarm that nobody has is said once an hour: whoever was not woken by six will not be by sixty. */
const hourlyFromMs = 60 * minuteMs
const hourMs = 60 * minuteMs
const ownersFromMs = 20 * minuteMs
/** Where nobody was surely reached, the next try does not wait for its turn. */
const unreachedMs = 2 * minuteMs

/** How far an alarm has been told; times are milliseconds since 1970. */
export type Telling = {
  raisedAt: number
  isAcknowledged: boolean
  quietUntil: number | null
  /** When it was told last; null where it never was. */
  lastAt: number | null
  /** Whether none of the last messages can still have reached anybody. */
  isUnreached: boolean
  /** Whether it was handed to somebody who has not been told. */
  isHandedUntold: boolean
}

/** Whether it is time to say an alarm, for the first time or again. */
export function isTimeToTell({ isAcknowledged, quietUntil, lastAt, ...told }: Telling, now: number): boolean {
  if (isAcknowledged || (quietUntil !== null && now < quietUntil)) return false
  if (lastAt === null || told.isHandedUntold) return true
  if (told.isUnreached && now - lastAt >= unreachedMs) return true
  const isHourly = lastAt - told.raisedAt >= hourlyFromMs
  return now - lastAt >= (isHourly ? hourMs : repeatMs)
}

/** Whether the owners hear of it too. */
export const areOwnersTold = ({ raisedAt, isUnreached }: Telling, now: number): boolean =>
  isUnreached || now - raisedAt >= ownersFromMs
