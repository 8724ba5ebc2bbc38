import type { CultureOutlook, Instant } from '@fryward/shared'
import { dayMs } from '@fryward/words'
import { amountScale, timeScale } from '@/base/charts/scales.ts'
import { midnightsBetween } from '@/base/dates/midnights.ts'
import { lanes, margin, tops } from './chart-lanes.ts'

export type Frame = {
  x: (at: string) => number
  y: (densityPerMl: number) => number
  ticks: number[]
  days: { at: Instant; x: number }[]
  nowX: number | null
  right: number
  /** Width of a bar: as much as fits between two records. */
  bar: number
}

/** The forecast's upper edge may run away; the axis follows the counts and the middle, with this much air. */
const headroom = 1.8

/** Of a date under the axis, with air to the next: "24 Nov" at 13 px. */
const dateWidth = 74

/** The axis reaches this far also over an empty culture, so that a line of noughts does not stand at the ceiling. */
const lowestTopPerMl = 10

function topOf(outlook: CultureOutlook): number {
  const counted = outlook.counts.map((count) => count.upperPerMl)
  const middle = [...outlook.ahead.map((point) => point.p75), ...outlook.behind.map((point) => point.p50)]
  const edge = [...outlook.ahead, ...outlook.behind].map((point) => point.p90)
  const inSight = headroom * Math.max(...middle, ...counted, lowestTopPerMl)
  return Math.max(lowestTopPerMl, Math.min(Math.max(...edge, lowestTopPerMl), inSight), ...counted)
}

/** From the first record to the last of the forecast; a culture counted once gets a day, so that it has a left and a right. */
function spanOf(outlook: CultureOutlook): { start: Date; end: Date } {
  const instants = [...outlook.counts, ...outlook.behind, ...outlook.ahead, ...outlook.harvests].map((one) =>
    new Date(one.at).getTime(),
  )
  const start = Math.min(...instants)
  return { start: new Date(start), end: new Date(Math.max(...instants, start + dayMs)) }
}

/** Scales of the chart: instants to x, animals per mL to y, in px. */
export function frameOf(outlook: CultureOutlook, { width, timeZone }: { width: number; timeZone: string }): Frame {
  const right = width - margin.right
  const span = spanOf(outlook)
  const x = timeScale(span, { left: margin.left, right })
  const density = amountScale(topOf(outlook), { floor: tops.density + lanes.density, ceiling: tops.density })
  const midnights = midnightsBetween(span.start, span.end, timeZone)
  const every = Math.ceil(midnights.length / Math.max(2, Math.floor((right - margin.left) / dateWidth)))
  const first = outlook.ahead[0]
  const days = (span.end.getTime() - span.start.getTime()) / dayMs
  return {
    x,
    y: density.toY,
    ticks: density.ticks,
    days: midnights.filter((_, i) => i % every === 0).map((at) => ({ at, x: x(at) })),
    nowX: first ? x(first.at) : null,
    right,
    bar: Math.max(2, Math.min(8, ((right - margin.left) / days) * 0.55)),
  }
}
