import { Temporal } from 'temporal-polyfill'

/** Sea water that eggs and larvae could be in; a reading outside is no reading. */
const temperatureRangeC = { from: 10, to: 40 }

/**
 * Refuses anything but a finite number in the range.
 * @throws RangeError naming the argument, its value and the range.
 */
export function checkNumber(name: string, value: number, range: { from: number; to: number }): number {
  if (typeof value === 'number' && value >= range.from && value <= range.to) return value
  throw new RangeError(`${name}: ${String(value)} is not a number from ${range.from} to ${range.to}`)
}

export const checkTemperatureC = (name: string, value: number): number => checkNumber(name, value, temperatureRangeC)

/** Parsed value, or a RangeError that names the argument, its value and what is wanted. */
function parsed<Value>(name: string, value: string, wanted: string, parse: () => Value): Value {
  try {
    return parse()
  } catch (cause) {
    throw new RangeError(`${name}: "${String(value)}" is not ${wanted}`, { cause })
  }
}

/** Epoch milliseconds of an ISO 8601 instant such as 2026-11-25T10:00:00Z. */
export function checkInstant(name: string, value: string): number {
  const wanted = 'an ISO 8601 instant such as 2026-11-25T10:00:00Z'
  return parsed(name, value, wanted, () => Temporal.Instant.from(value).epochMilliseconds)
}

export function checkDate(name: string, value: string): Temporal.PlainDate {
  return parsed(name, value, 'a date such as 2026-11-25', () => Temporal.PlainDate.from(value))
}

export function checkTime(name: string, value: string): Temporal.PlainTime {
  const wanted = 'a time of day from 00:00 to 23:59, such as 19:30'
  return parsed(name, value, wanted, () => {
    if (!/^\d{2}:\d{2}$/.test(value)) throw new RangeError('expected HH:MM')
    return Temporal.PlainTime.from(value)
  })
}

export function checkTimeZone(name: string, value: string): string {
  const wanted = 'a time zone such as Europe/Lisbon'
  return parsed(
    name,
    value,
    wanted,
    () => Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(value).timeZoneId,
  )
}

export const isPlainDate = (value: string): boolean => /^\d{4}-\d{2}-\d{2}$/.test(value)

/** Without trailing zeros of a second, as Temporal writes instants; Date writes them thirty times faster. */
export const toInstantText = (epochMs: number): string =>
  new Date(Math.round(epochMs)).toISOString().replace(/\.?0+Z$/, 'Z')
