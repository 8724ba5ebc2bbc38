import { Temporal } from 'temporal-polyfill'
import { hourMs } from '../calendar/elapsed.ts'
import { checkTime, checkTimeZone } from './check.ts'

/** When the room's lights go off: local time of day and IANA time zone. */
export interface LightsOff {
  /** HH:MM */
  time: string
  timeZone: string
}

/** One night, which belongs to the local date on which its lights went off, or one local day. */
export interface Period {
  date: string
  /** The date whose morning finds this night over: the next, or its own where lights go off after midnight. */
  morningAfter: string
  windowFromMs: number
  windowToMs: number
  /** What is ready later belongs to the next: half way between two nights, or midnight between two days. */
  endsMs: number
}

/** Lights that go off earlier than this belong to a night that began late, not to a day reversed. */
const morningHour = 6

/** Nights whose window ends after the start, without end; the caller stops. Clock changes are the time zone's. */
export function* nightsAfter(
  startMs: number,
  lightsOff: LightsOff,
  window: { from: number; to: number },
): Generator<Period> {
  const time = checkTime('lightsOff.time', lightsOff.time)
  const timeZone = checkTimeZone('lightsOff.timeZone', lightsOff.timeZone)
  const lightsOffMs = (date: Temporal.PlainDate): number =>
    date.toZonedDateTime({ timeZone, plainTime: time }).epochMilliseconds
  const middle = ((window.from + window.to) / 2) * hourMs
  let date = Temporal.Instant.fromEpochMilliseconds(startMs)
    .toZonedDateTimeISO(timeZone)
    .toPlainDate()
    .subtract({ days: 1 })
  for (;;) {
    const next = date.add({ days: 1 })
    const offMs = lightsOffMs(date)
    const night = {
      date: date.toString(),
      morningAfter: (time.hour < morningHour ? date : next).toString(),
      windowFromMs: offMs + window.from * hourMs,
      windowToMs: offMs + window.to * hourMs,
      endsMs: (offMs + lightsOffMs(next)) / 2 + middle,
    }
    if (night.windowToMs > startMs) yield night
    date = next
  }
}

/** Local days from the start's own on, without end; the caller stops. */
export function* daysFrom(startMs: number, timeZone: string): Generator<Period> {
  checkTimeZone('timeZone', timeZone)
  const dayStartMs = (date: Temporal.PlainDate): number => date.toZonedDateTime(timeZone).epochMilliseconds
  let date = Temporal.Instant.fromEpochMilliseconds(startMs).toZonedDateTimeISO(timeZone).toPlainDate()
  for (;;) {
    const next = date.add({ days: 1 })
    const endsMs = dayStartMs(next)
    yield {
      date: date.toString(),
      morningAfter: next.toString(),
      windowFromMs: dayStartMs(date),
      windowToMs: endsMs,
      endsMs,
    }
    date = next
  }
}
