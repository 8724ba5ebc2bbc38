'use client'

import type { Gauge, GaugeSeries } from '@fryward/shared'
import { gaugeQuantityLabels, sayMoment, sayNumber, sayQuantity, sayWeekdayDay, toPlainDate } from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import charts from '@/base/charts/charts.module.css'
import { FoldedTable } from '@/base/charts/FoldedTable.tsx'
import { midnightsBetween } from '@/base/dates/midnights.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import { gaugeChart, gaugeFrame } from './gauge-frame.ts'
import styles from './gauges.module.css'

type Props = { gauge: Gauge; series: GaugeSeries; timeZone: string }

// Rows of the table: a person reads no more.
const mostRows = 60

/** Means as a line, extremes as a band around it, limits dashed; where nothing was read the line is broken. */
export function GaugeChart({ gauge, series, timeZone }: Props) {
  const { ref, width } = useElementSize()
  const voice = useVoice()
  const say = (value: number) => sayQuantity({ value, unit: gauge.unit }, voice)
  const values = series.points.flatMap(({ low, high }) => [low, high])
  if (values.length === 0) return <p className={styles.soft}>Nothing was read in this time.</p>
  const sentence = `${gaugeQuantityLabels[gauge.quantity]} in ${gauge.subject.name} between ${say(Math.min(...values))} and ${say(Math.max(...values))}.`
  const every = Math.ceil(series.points.length / mostRows)
  const rows = series.points.filter((_, index) => index % every === 0)
  return (
    <>
      <div ref={ref} style={{ height: gaugeChart.height }}>
        {width > 0 && (
          <svg width={width} height={gaugeChart.height} role="img" aria-label={sentence} className={charts.chart}>
            <Drawing gauge={gauge} series={series} timeZone={timeZone} width={width} />
          </svg>
        )}
      </div>
      <FoldedTable
        label={sentence}
        headings={['When', 'Mean', 'Lowest', 'Highest']}
        rows={rows.map(({ at, mean, low, high }) => ({
          key: at,
          cells: [sayMoment(at, series.to, voice), say(mean), say(low), say(high)],
        }))}
      />
    </>
  )
}

function Drawing({ gauge, series, timeZone, width }: Props & { width: number }) {
  const voice = useVoice()
  const frame = gaugeFrame({ series, gauge, width })
  const midnights = midnightsBetween(new Date(series.from), new Date(series.to), timeZone)
  // As many days as have room for their name.
  const every = Math.ceil((midnights.length * 70) / width)
  const across = { x1: gaugeChart.left, x2: frame.right }
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
      {midnights.map((at, index) => (
        <g key={at}>
          <line
            className={styles.midnight}
            x1={frame.x(at)}
            x2={frame.x(at)}
            y1={gaugeChart.top}
            y2={gaugeChart.floor}
          />
          {index % every === 0 && (
            <text className={charts.tick} x={frame.x(at) + 3} y={gaugeChart.height - 8}>
              {sayWeekdayDay(toPlainDate(at, timeZone), voice)}
            </text>
          )}
        </g>
      ))}
      {frame.spreads.map((path) => (
        <path key={path} className={styles.spread} d={path} />
      ))}
      {frame.lines.map((path) => (
        <path key={path} className={styles.line} d={path} />
      ))}
      {[gauge.low, gauge.high].map(
        (limit) =>
          limit !== null && (
            <line key={limit} className={styles.limit} {...across} y1={frame.y(limit)} y2={frame.y(limit)} />
          ),
      )}
    </g>
  )
}

/** Ticks are round in the unit that is kept; a room of other units reads them in its own. */
const sayTick = ({ unit }: Gauge, tick: number, units: 'metric' | 'us'): number =>
  unit === 'degC' && units === 'us' ? Math.round((tick * 9) / 5 + 32) : tick
