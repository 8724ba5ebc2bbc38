'use client'

import type { Gauge, GaugeSeries, Mark } from '@fryward/shared'
import {
  gaugeQuantityLabels,
  sayDayMonth,
  sayMoment,
  sayNumber,
  sayQuantity,
  sayTime,
  sayWeekdayDay,
  toPlainDate,
} from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import charts from '@/base/charts/charts.module.css'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { hoursBetween } from '@/base/dates/hours.ts'
import { midnightsBetween } from '@/base/dates/midnights.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { gaugeChart, gaugeFrame } from './gauge-frame.ts'
import styles from './gauges.module.css'
import { MarkSign } from './MarkSign.tsx'
import { markGroups } from './mark-groups.ts'
import { sayRead } from './say-read.ts'

type Props = { gauge: Gauge; series: GaugeSeries; marks: readonly Mark[]; timeZone: string }

// Rows of the table: a person reads no more.
const mostRows = 60

/** Means as a line, extremes as a band around it, limits dashed; where nothing was read the line is broken. */
export function GaugeChart({ gauge, series, marks, timeZone }: Props) {
  const { ref, width } = useElementSize()
  const voice = useVoice()
  const say = (value: number) => sayQuantity({ value, unit: gauge.unit }, voice)
  const values = series.points.flatMap(({ low, high }) => [low, high])
  if (values.length === 0) return <p className={styles.soft}>Nothing was read in this time.</p>
  const ends = [Math.min(...values), Math.max(...values)].map((value) => sayRead(gauge, value, voice))
  const sentence = `${gaugeQuantityLabels[gauge.quantity]} in ${gauge.subject.name} between ${ends.join(' and ')}.`
  const every = Math.ceil(series.points.length / mostRows)
  const rows = series.points.filter((_, index) => index % every === 0)
  return (
    <>
      <div ref={ref} style={{ height: gaugeChart.height }}>
        {width > 0 && (
          <svg width={width} height={gaugeChart.height} role="img" aria-label={sentence} className={charts.chart}>
            <Drawing gauge={gauge} series={series} marks={marks} timeZone={timeZone} width={width} />
          </svg>
        )}
      </div>
      <FoldedTable
        label={sentence}
        headings={['When', 'Mean', 'Lowest', 'Highest']}
        rows={rows.map(({ at, mean, low, high }) => ({
          key: at,
          cells: [sayMoment(at, series.to, voice), sayRead(gauge, mean, voice), say(low), say(high)],
        }))}
      />
    </>
  )
}

function Drawing({ gauge, series, marks, timeZone, width }: Props & { width: number }) {
  const voice = useVoice()
  const frame = gaugeFrame({ series, gauge, width, height: gaugeChart.height })
  const across = { x1: gaugeChart.left, x2: frame.right }
  const own = marks.filter(({ alarm }) => alarm === null || alarm.gaugeId === gauge.id)
  const end = series.points.at(-1)
  return (
    <g>
      {frame.ticks.map((tick) => (
        <g key={tick}>
          <line className={charts.grid} {...across} y1={frame.y(tick)} y2={frame.y(tick)} />
          <text className={charts.tick} x={gaugeChart.left - 6} y={frame.y(tick) + 4} textAnchor="end">
            {sayNumber(sayTick(gauge, tick, voice.units), voice)}
          </text>
        </g>
      ))}
      <TimeLines series={series} frame={frame} timeZone={timeZone} width={width} />
      {frame.spreads.map((path) => (
        <path key={path} className={styles.spread} d={path} />
      ))}
      {frame.lines.map((path) => (
        <path key={path} className={styles.line} d={path} />
      ))}
      {end && <circle className={styles.end} cx={frame.x(end.at)} cy={frame.y(end.mean)} r={3.5} />}
      {[gauge.low, gauge.high].map(
        (limit) =>
          limit !== null && (
            <line key={limit} className={styles.limit} {...across} y1={frame.y(limit)} y2={frame.y(limit)} />
          ),
      )}
      {gauge.saturation && <FullLine y={frame.y(gauge.saturation.mgPerL)} {...across} />}
      {markGroups(own, frame.x).map(({ x, kind }) => (
        <g key={x}>
          <line className={styles.mark} x1={x} x2={x} y1={gaugeChart.top - 8} y2={frame.floor} />
          <MarkSign kind={kind} x={x} y={gaugeChart.top - 15} />
        </g>
      ))}
    </g>
  )
}

/** Where the water holds no more, at its warmth and salinity of now. */
const FullLine = ({ y, x1, x2 }: { y: number; x1: number; x2: number }) => (
  <>
    <line className={styles.full} {...{ x1, x2 }} y1={y} y2={y} />
    <text className={charts.tick} x={x1 + 4} y={y - 4}>
      saturated
    </text>
  </>
)

type Frame = ReturnType<typeof gaugeFrame>
const hourMs = 3_600_000
// A name of a day or a time of day takes as much.
const nameWidth = 70

/** Days of the room, or times of day where the span is no longer than a day or two. */
function TimeLines({
  series,
  frame,
  timeZone,
  width,
}: Omit<Props, 'gauge' | 'marks'> & { frame: Frame; width: number }) {
  const voice = useVoice()
  const [from, to] = [new Date(series.from), new Date(series.to)]
  const midnights = midnightsBetween(from, to, timeZone)
  const hours = hoursIn(from, to, timeZone).filter((at) => !midnights.includes(at))
  // As many as have room for their name.
  const every = Math.ceil((midnights.length * nameWidth) / width)
  // Of some weeks a weekday tells more, of months the month.
  const sayDate = to.getTime() - from.getTime() > 45 * 24 * hourMs ? sayDayMonth : sayWeekdayDay
  const named = (at: string, name: string, isDay: boolean) => (
    <g key={at}>
      <line
        className={isDay ? styles.midnight : styles.hour}
        {...{ x1: frame.x(at), x2: frame.x(at), y1: gaugeChart.top, y2: frame.floor }}
      />
      {frame.x(at) < frame.right - nameWidth / 2 && (
        <text className={charts.tick} x={frame.x(at) + 3} y={frame.floor + 22}>
          {name}
        </text>
      )}
    </g>
  )
  return (
    <>
      {midnights
        .filter((_, index) => index % every === 0)
        .map((at) => named(at, sayDate(toPlainDate(at, timeZone), voice), true))}
      {hours.map((at) => named(at, sayTime(at, voice), false))}
    </>
  )
}

function hoursIn(from: Date, to: Date, timeZone: string): string[] {
  const spanMs = to.getTime() - from.getTime()
  if (spanMs > 36 * hourMs) return []
  const everyMinutes = spanMs > 2 * hourMs ? 360 : 15
  return hoursBetween(from, to, { timeZone, everyMinutes })
}

/** Ticks are round in the unit that is kept; a room of other units reads them in its own. */
const sayTick = ({ unit }: Gauge, tick: number, units: 'metric' | 'us'): number =>
  unit === 'degC' && units === 'us' ? Math.round((tick * 9) / 5 + 32) : tick
