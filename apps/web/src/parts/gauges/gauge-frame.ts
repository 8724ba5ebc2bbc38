import type { Gauge, GaugeSeries } from '@fryward/shared'
import { scaleLinear } from 'd3-scale'
import { area, line } from 'd3-shape'
import { timeScale } from '@/base/charts/scales.ts'

/** Signs of what happened stand above, days below. */
export const gaugeChart = { height: 186, left: 44, right: 8, top: 26, foot: 30 } as const

type Point = GaugeSeries['points'][number]
type Asked = { series: GaugeSeries; gauge: Pick<Gauge, 'low' | 'high' | 'saturation'>; width: number; height: number }

// A band is not drawn thinner than this on the axis, or noise of a probe would look like a storm.
const leastSpread = 1

/** Where everything of a gauge's chart lies, in pixels; its lines break where nothing was read. */
export function gaugeFrame({ series, gauge, width, height }: Asked) {
  const floor = height - gaugeChart.foot
  const right = width - gaugeChart.right
  const x = timeScale({ start: new Date(series.from), end: new Date(series.to) }, { left: gaugeChart.left, right })
  const limits = [gauge.low, gauge.high, gauge.saturation?.mgPerL ?? null].filter((limit) => limit !== null)
  const shown = [...series.points.flatMap(({ low, high }) => [low, high]), ...limits]
  const [lowest, highest] = [Math.min(...shown), Math.max(...shown)]
  const middle = (lowest + highest) / 2
  const half = Math.max(highest - lowest, leastSpread) / 2
  const scale = scaleLinear()
    .domain([middle - half, middle + half])
    .nice(4)
    .range([floor, gaugeChart.top])
  const at = (point: Point) => x(point.at)
  const runs = runsOf(series)
  return {
    x,
    y: (value: number) => scale(value),
    right,
    floor,
    ticks: scale.ticks(4),
    lines: runs.map((run) => line<Point>(at, ({ mean }) => scale(mean))(run) ?? ''),
    spreads: runs.map(
      (run) =>
        area<Point>()
          .x(at)
          .y0(({ low }) => scale(low))
          .y1(({ high }) => scale(high))(run) ?? '',
    ),
  }
}

/** Points that follow one another without a step left out; two steps may pass, as devices are not on time. */
export function runsOf({ points, stepS }: Pick<GaugeSeries, 'points' | 'stepS'>): Point[][] {
  const runs: Point[][] = []
  // A gauge that reads more seldom than a step is as wide is not all gaps.
  const usualMs = usualGap(points) ?? 0
  const mostMs = Math.max(stepS * 1000, usualMs) * 2.5
  for (const point of points) {
    const last = runs.at(-1)?.at(-1)
    if (last && Date.parse(point.at) - Date.parse(last.at) <= mostMs) runs.at(-1)?.push(point)
    else runs.push([point])
  }
  return runs
}

function usualGap(points: Point[]): number | undefined {
  const gaps = points.slice(1).map((point, i) => Date.parse(point.at) - Date.parse(points[i]?.at ?? point.at))
  return gaps.toSorted((one, other) => one - other)[Math.floor(gaps.length / 2)]
}
