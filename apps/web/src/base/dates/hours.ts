import type { Instant } from '@fryward/shared'
import { Temporal } from 'temporal-polyfill'

/** The instants between two others that are so many minutes apart, counted from where each day of that zone begins. */
export function hoursBetween(
  from: Date,
  until: Date,
  { timeZone, everyMinutes }: { timeZone: string; everyMinutes: number },
): Instant[] {
  const found: Instant[] = []
  let day = Temporal.Instant.fromEpochMilliseconds(from.getTime()).toZonedDateTimeISO(timeZone).startOfDay()
  while (day.epochMilliseconds <= until.getTime()) {
    const next = day.add({ days: 1 }).startOfDay()
    for (let at = day.epochMilliseconds; at < next.epochMilliseconds; at += everyMinutes * 60_000)
      if (at >= from.getTime() && at <= until.getTime())
        found.push(Temporal.Instant.fromEpochMilliseconds(at).toString())
    day = next
  }
  return found
}
