import type { Instant, PlainDate } from '@fryward/shared'
import { Temporal } from 'temporal-polyfill'

/** '2026-11-25T07:40' of the room's wall clock as an instant; undefined for an unfinished text. */
export function toInstant(localText: string, timeZone: string): Instant | undefined {
  try {
    const local = Temporal.PlainDateTime.from(localText)
    return local.toZonedDateTime(timeZone).toInstant().toString({ smallestUnit: 'second' })
  } catch (error) {
    // A half-typed date is no date yet.
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** The room's wall clock at an instant: '2026-11-25T07:40'. */
export const toLocalText = (at: Instant, timeZone: string): string =>
  Temporal.Instant.from(at).toZonedDateTimeISO(timeZone).toPlainDateTime().toString({ smallestUnit: 'minute' })

export const todayIn = (timeZone: string): PlainDate => Temporal.Now.plainDateISO(timeZone).toString()
