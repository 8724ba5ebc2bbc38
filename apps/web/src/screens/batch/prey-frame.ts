import { roundStep } from '@/base/charts/scale.ts'
import type { HeldBand, PreyCount } from './prey-chart.ts'

/** Heights in px from top to bottom: densities, then the feeds, dates last. */
const lanes = { density: 170, feeds: 22, dates: 24, gap: 8 } as const
export const preyChartHeight = lanes.density + lanes.feeds + lanes.dates + lanes.gap * 2
export const preyMargin = { left: 40, right: 12, top: 8 } as const
export const preyTops = {
  floor: lanes.density,
  feeds: lanes.density + lanes.gap,
  feedsEnd: lanes.density + lanes.gap + lanes.feeds,
  dates: lanes.density + lanes.feeds + lanes.gap * 2,
} as const

export type PreyFrame = {
  x: (at: string | Date) => number
  y: (perMl: number) => number
  ticks: number[]
  right: number
}

/** Scales of the chart: instants to x, prey per mL to y, in px. The band is always in sight. */
export function preyFrame({
  counts,
  held,
  span,
  width,
}: {
  counts: PreyCount[]
  held: HeldBand | undefined
  span: { start: Date; end: Date }
  width: number
}): PreyFrame {
  const highest = Math.max(1, held?.most ?? 0, ...counts.map((count) => count.highestPerMl))
  const step = roundStep(highest)
  const top = Math.ceil(highest / step) * step
  const right = width - preyMargin.right
  const spanMs = span.end.getTime() - span.start.getTime()
  const room = lanes.density - preyMargin.top
  return {
    x: (at) => preyMargin.left + ((new Date(at).getTime() - span.start.getTime()) / spanMs) * (right - preyMargin.left),
    y: (perMl) => preyMargin.top + room * (1 - Math.max(0, Math.min(perMl, top)) / top),
    ticks: Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step),
    right,
  }
}
