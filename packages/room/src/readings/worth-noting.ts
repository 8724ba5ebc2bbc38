import type { GaugeQuantity } from '@fryward/shared'

const hourMs = 3_600_000
const dayMs = 24 * hourMs

/** What rules read, and by how much it has to differ from what they know before they hear of it sooner than daily. */
const differs: Partial<Record<GaugeQuantity, number>> = {
  // common practice: what a good probe or test tells apart.
  temperature: 0.3,
  salinity: 0.5,
  ph: 0.1,
  oxygen: 0.5,
}

type Hour = { hour: number; mean: number; number: number }
export type Noted = { from: number; to: number; mean: number; readings: number }

export const isReadByRules = (quantity: GaugeQuantity): boolean => differs[quantity] !== undefined

/**
 * What of a gauge's hours is worth a record of the room: each day, and sooner where the last hours differ from what was
 * noted. Hours of one level are one record; times are milliseconds since 1970.
 */
export function worthNoting(
  quantity: GaugeQuantity,
  { hours, notedValue, notedUntil }: { hours: readonly Hour[]; notedValue: number | null; notedUntil: number | null },
  now: number,
): Noted[] {
  const tolerance = differs[quantity]
  if (tolerance === undefined) return []
  const noted: Noted[] = []
  let open: Noted | null = null
  let known = notedValue
  for (const { hour, mean, number } of hours) {
    if (open && (Math.abs(mean - open.mean) >= tolerance || hour - open.from >= dayMs)) {
      noted.push(open)
      known = open.mean
      open = null
    }
    open =
      open === null ? { from: hour, to: hour + hourMs, mean, readings: number } : withHour(open, { hour, mean, number })
  }
  if (open && (known === null || Math.abs(open.mean - known) >= tolerance || now - (notedUntil ?? open.from) >= dayMs))
    noted.push(open)
  return noted
}

const withHour = (noted: Noted, { hour, mean, number }: Hour): Noted => ({
  from: noted.from,
  to: hour + hourMs,
  mean: (noted.mean * noted.readings + mean * number) / (noted.readings + number),
  readings: noted.readings + number,
})
