import type { Instant } from '@fryward/shared'
import { Temporal } from 'temporal-polyfill'

/** The instants between two others at which a day of that zone begins; on a day without a midnight, where it starts. */
export function midnightsBetween(from: Date, until: Date, timeZone: string): Instant[] {
  const [first, last] = [from, until].map((at) => Temporal.Instant.fromEpochMilliseconds(at.getTime()))
  const midnights: Instant[] = []
  if (!first || !last) return midnights
  let day = first.toZonedDateTimeISO(timeZone).startOfDay()
  while (Temporal.Instant.compare(day.toInstant(), last) <= 0) {
    if (Temporal.Instant.compare(day.toInstant(), first) >= 0) midnights.push(day.toInstant().toString())
    day = day.add({ days: 1 }).startOfDay()
  }
  return midnights
}
