import { dayMs, hourMs } from '../calendar/elapsed.ts'
import type { ThermalDuration } from '../species/index.ts'
import { checkInstant, checkTemperatureC } from './check.ts'
import { developmentRate, isOutsideTried } from './rate.ts'

export interface TemperatureReading {
  /** ISO 8601 instant. */
  at: string
  temperatureC: number
}

/** What is known of a tank's warmth. Readings may come in any order; two at one instant count as their mean. */
export interface TankWarmth {
  temperatures: readonly TemperatureReading[]
  /** Holds before the first reading and from a day after the last; without it the nearest reading does. */
  setPointC?: number | undefined
}

/** Development since a start, in days at the reference temperature. */
export interface ThermalClock {
  progressDays(epochMs: number): number
  hoursOutsideTried(untilMs: number): number
}

interface Stretch {
  fromMs: number
  temperatureC: number
}

interface Piece {
  fromMs: number
  rate: number
  isOutside: boolean
  progressDays: number
  outsideMs: number
}

/** How long the last reading speaks for the water once there is a set point: a day, the usual gap between hand readings. */
const lastReadingHoldsMs = dayMs

/**
 * Integrates development over the tank's readings, each held until the next.
 * @throws RangeError when neither a reading nor a set point is given, or one is outside 10 to 40 C.
 */
export function thermalClock(duration: ThermalDuration, startMs: number, warmth: TankWarmth): ThermalClock {
  const pieces = integrate(duration, startMs, stretches(warmth))
  const pieceAt = (epochMs: number): Piece => pieces[lastAtOrBefore(pieces, epochMs)]!
  return {
    progressDays(epochMs) {
      const piece = pieceAt(epochMs)
      return piece.progressDays + (piece.rate * (Math.max(epochMs, startMs) - piece.fromMs)) / dayMs
    },
    hoursOutsideTried(untilMs) {
      const piece = pieceAt(untilMs)
      const sinceMs = piece.isOutside ? Math.max(untilMs, startMs) - piece.fromMs : 0
      return (piece.outsideMs + sinceMs) / hourMs
    },
  }
}

function stretches({ temperatures, setPointC }: TankWarmth): Stretch[] {
  if (setPointC !== undefined) checkTemperatureC('setPointC', setPointC)
  const readings = meanByInstant(temperatures)
  const first = readings[0]
  const last = readings.at(-1)
  if (!first || !last) {
    if (setPointC === undefined)
      throw new RangeError('temperatures: [] is empty; give one reading or more, or setPointC')
    return [{ fromMs: Number.NEGATIVE_INFINITY, temperatureC: setPointC }]
  }
  const before = { fromMs: Number.NEGATIVE_INFINITY, temperatureC: setPointC ?? first.temperatureC }
  const after = setPointC === undefined ? [] : [{ fromMs: last.fromMs + lastReadingHoldsMs, temperatureC: setPointC }]
  return [before, ...readings, ...after]
}

function meanByInstant(temperatures: readonly TemperatureReading[]): Stretch[] {
  const byInstant = new Map<number, number[]>()
  for (const [index, reading] of temperatures.entries()) {
    const atMs = checkInstant(`temperatures[${index}].at`, reading.at)
    const value = checkTemperatureC(`temperatures[${index}].temperatureC`, reading.temperatureC)
    byInstant.set(atMs, [...(byInstant.get(atMs) ?? []), value])
  }
  return [...byInstant]
    .map(([fromMs, values]) => ({ fromMs, temperatureC: mean(values.sort((a, b) => a - b)) }))
    .sort((a, b) => a.fromMs - b.fromMs)
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

function integrate(duration: ThermalDuration, startMs: number, parts: readonly Stretch[]): Piece[] {
  const firstIndex = lastAtOrBefore(parts, startMs)
  let progressDays = 0
  let outsideMs = 0
  return parts.slice(firstIndex).map((part, index, rest) => {
    const fromMs = Math.max(part.fromMs, startMs)
    const rate = developmentRate(duration, part.temperatureC)
    const piece = { fromMs, rate, isOutside: isOutsideTried(duration, part.temperatureC), progressDays, outsideMs }
    const lastsMs = (rest[index + 1]?.fromMs ?? fromMs) - fromMs
    progressDays += (rate * lastsMs) / dayMs
    if (piece.isOutside) outsideMs += lastsMs
    return piece
  })
}

/** Index of the last entry that starts at or before the instant; the first entry when none does. */
function lastAtOrBefore(entries: readonly { fromMs: number }[], epochMs: number): number {
  let low = 0
  let high = entries.length - 1
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (entries[middle]!.fromMs <= epochMs) low = middle
    else high = middle - 1
  }
  return low
}
