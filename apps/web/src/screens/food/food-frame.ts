import { area, line } from 'd3-shape'
import { amountScale } from '@/base/charts/scales.ts'
import { lanes, margin } from './food-lanes.ts'
import type { BandDay } from './food-nights.ts'

export type Band = { p10: number; p50: number; p90: number }
const bandsTop = lanes.moons + lanes.cones + lanes.gap

/** Of a date under the axis, with air to the next: "24 Nov" at 13 px. */
const dateWidth = 74

export type FoodFrame = {
  x: (day: number) => number
  y: (animals: number) => number
  ticks: number[]
  /** Days whose date stands under the axis. */
  dated: number[]
  right: number
  top: number
  floor: number
}

/** Both bands on one axis; a band's upper edge may run off it, its middle and the food wanted never do. */
export function foodFrame(days: readonly BandDay[], also: readonly BandDay[], width: number): FoodFrame {
  const right = width - margin.right
  const step = (right - margin.left) / Math.max(1, days.length - 1)
  const seen = [...days, ...also]
  const highest = Math.max(1, ...seen.map(({ wanted, couldGive }) => Math.max(wanted.p90, couldGive.p50)))
  const floor = bandsTop + lanes.bands
  const { toY, ticks } = amountScale(highest, { floor, ceiling: bandsTop })
  const every = Math.max(1, Math.ceil(dateWidth / step))
  return {
    x: (day) => margin.left + day * step,
    y: toY,
    ticks,
    dated: days.map((_, day) => day).filter((day) => day % every === 0),
    right,
    top: bandsTop,
    floor,
  }
}

export const bandPath = ({ x, y }: FoodFrame, bands: readonly Band[]): string =>
  area<Band>(
    (_, day) => x(day),
    ({ p10 }) => y(p10),
    ({ p90 }) => y(p90),
  )([...bands]) ?? ''

export const middlePath = ({ x, y }: FoodFrame, bands: readonly Band[]): string =>
  line<Band>(
    (_, day) => x(day),
    ({ p50 }) => y(p50),
  )([...bands]) ?? ''
