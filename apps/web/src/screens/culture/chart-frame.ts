import type { CultureOutlook } from '@fryward/shared'
import { roundStep } from '@/base/charts/scale.ts'

/** Heights in px from top to bottom: harvests hang, density stands, the egg ratio lies under it, dates last. */
export const lanes = { harvest: 46, density: 190, eggs: 44, dates: 26, gap: 10 } as const
export const chartHeight = lanes.harvest + lanes.density + lanes.eggs + lanes.dates + lanes.gap * 3
export const margin = { left: 46, right: 12 } as const

export const tops = {
  harvest: 0,
  density: lanes.harvest + lanes.gap,
  eggs: lanes.harvest + lanes.density + lanes.gap * 2,
  dates: lanes.harvest + lanes.density + lanes.eggs + lanes.gap * 2,
} as const

export type Frame = {
  x: (at: string) => number
  y: (densityPerMl: number) => number
  ticks: number[]
  days: { atMs: number; x: number }[]
  nowX: number | null
  right: number
  /** Width of a bar: as much as fits between two records. */
  bar: number
}

const dayMs = 86_400_000
/** The forecast's upper edge may run away; the axis follows the counts and the middle, with this much air. */
const headroom = 1.8

function topOf(outlook: CultureOutlook): number {
  const counted = outlook.counts.map((count) => count.upperPerMl)
  const middle = [...outlook.ahead.map((point) => point.p75), ...outlook.behind.map((point) => point.p50)]
  const edge = [...outlook.ahead, ...outlook.behind].map((point) => point.p90)
  return Math.max(10, Math.min(Math.max(...edge, 10), headroom * Math.max(...middle, ...counted, 10)), ...counted)
}

/** Scales of the chart: instants to x, animals per mL to y, in px. */
export function frameOf(outlook: CultureOutlook, width: number): Frame {
  const instants = [...outlook.counts, ...outlook.behind, ...outlook.ahead, ...outlook.harvests].map((one) =>
    new Date(one.at).getTime(),
  )
  const fromMs = Math.min(...instants)
  const untilMs = Math.max(...instants, fromMs + dayMs)
  const right = width - margin.right
  const xOf = (ms: number) => margin.left + ((ms - fromMs) / (untilMs - fromMs)) * (right - margin.left)
  const step = roundStep(topOf(outlook))
  const top = Math.ceil(topOf(outlook) / step) * step
  const everyDays = Math.max(
    1,
    Math.ceil((untilMs - fromMs) / dayMs / Math.max(2, Math.floor((right - margin.left) / 74))),
  )
  const days: Frame['days'] = []
  for (let ms = Math.ceil(fromMs / dayMs) * dayMs; ms <= untilMs; ms += everyDays * dayMs)
    days.push({ atMs: ms, x: xOf(ms) })
  const first = outlook.ahead[0]
  return {
    x: (at) => xOf(new Date(at).getTime()),
    y: (density) => tops.density + lanes.density * (1 - Math.max(0, Math.min(density, top)) / top),
    ticks: Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step),
    days,
    nowX: first ? xOf(new Date(first.at).getTime()) : null,
    right,
    bar: Math.max(2, Math.min(8, ((right - margin.left) / Math.max(1, (untilMs - fromMs) / dayMs)) * 0.55)),
  }
}
