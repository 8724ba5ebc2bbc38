import { amountScale, timeScale } from '@/base/charts/scales.ts'
import type { HeldBand, PreyCount } from './prey-chart.ts'
import { preyMargin, preyTops } from './prey-lanes.ts'

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
  const right = width - preyMargin.right
  const { toY, ticks } = amountScale(highest, { floor: preyTops.floor, ceiling: preyMargin.top })
  return { x: timeScale(span, { left: preyMargin.left, right }), y: toY, ticks, right }
}
