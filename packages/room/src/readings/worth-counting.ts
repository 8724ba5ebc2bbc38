import { quantities } from '@fryward/readings'
import type { GaugeQuantity } from '@fryward/shared'
import { gaugeQuantityLabels } from '@fryward/words'
import { isReadByRules, type Noted, worthNoting } from './worth-noting.ts'

const hourMs = 3_600_000
// What came late by more than this changes charts, and no record of the room.
export const lookBackMs = 72 * hourMs
// So few readings may agree by chance. common practice
const fewestOfStuck = 10

type Reading = { at: number; value: number }
type Of = {
  quantity: GaugeQuantity
  stuckAfterHours: number | null
  notedUntil: number | null
  notedValue: number | null
  /** It hangs in a tank or a culture, which rules ask of. */
  isInVessel: boolean
  /** An alarm says that it reads nonsense or is stuck. */
  isDisbelieved: boolean
}

/**
 * What rules are to read of readings that a person brings, by what holds for those that a device posts: recent, later than
 * what they know, plausible, of no gauge that is stuck; or why they read none. Times are milliseconds since 1970.
 */
export function worthCounting(gauge: Of, readings: readonly Reading[], now: number): { noted: Noted[]; why: string } {
  const none = (why: string) => ({ noted: [], why: `Charts show them. Tasks go by none of them: ${why}` })
  if (!gauge.isInVessel || !isReadByRules(gauge.quantity))
    return none(`no task asks for ${gaugeQuantityLabels[gauge.quantity].toLowerCase()} here.`)
  const recent = readings.filter(({ at }) => at > now - lookBackMs)
  if (recent.length === 0) return none('the newest is more than three days old.')
  const unknown = recent.filter(({ at }) => at >= (gauge.notedUntil ?? 0)).toSorted((one, other) => one.at - other.at)
  if (unknown.length === 0) return none('they know this gauge up to a later time already.')
  if (gauge.isDisbelieved) return none('an alarm says that this gauge is not to be believed.')
  if (isStuck(gauge, unknown)) return none(`it reads one and the same value for ${gauge.stuckAfterHours} hours.`)
  const { low, high } = quantities[gauge.quantity].plausible
  const hours = hoursOf(unknown).filter(({ mean }) => mean >= low && mean <= high)
  if (hours.length === 0) return none(`no water here is outside of ${low} to ${high}.`)
  const noted = worthNoting(gauge.quantity, { ...gauge, hours }, now)
  if (noted.length === 0) return none('they read what the tasks know already.')
  return {
    // The hour of now is not over.
    noted: noted.map((each) => ({ ...each, to: Math.min(each.to, now) })),
    why: 'Charts show them, and tasks and forecasts go by the latest of them.',
  }
}

/** One and the same value to the end, for as long as makes a gauge stuck. */
function isStuck({ stuckAfterHours }: Of, sorted: readonly Reading[]): boolean {
  const last = sorted.at(-1)
  if (stuckAfterHours === null || !last) return false
  const same = sorted.slice(sorted.findLastIndex(({ value }) => value !== last.value) + 1)
  return same.length >= fewestOfStuck && last.at - (same[0]?.at ?? last.at) >= stuckAfterHours * hourMs
}

function hoursOf(sorted: readonly Reading[]): { hour: number; mean: number; number: number }[] {
  const values = new Map<number, number[]>()
  for (const { at, value } of sorted) {
    const hour = Math.floor(at / hourMs) * hourMs
    values.set(hour, [...(values.get(hour) ?? []), value])
  }
  return [...values].map(([hour, of]) => ({
    hour,
    mean: of.reduce((sum, value) => sum + value, 0) / of.length,
    number: of.length,
  }))
}
