'use client'

import type { CultureOutlook } from '@fryward/shared'
import { sayDayMonth, sayNumber, toPlainDate } from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import { area, line } from 'd3-shape'
import charts from '@/base/charts/charts.module.css'
import { ValueLines } from '@/base/charts/ValueLines.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { type Frame, frameOf } from './chart-frame.ts'
import { chartHeight, lanes, margin, tops } from './chart-lanes.ts'
import styles from './cultures.module.css'

type Props = { outlook: CultureOutlook; timeZone: string; hasEggs: boolean }

/** Counts as dots with their error, bands behind and ahead, harvests hanging from above; of rotifers the egg ratio underneath. */
export function DensityChart({ outlook, timeZone, hasEggs }: Props) {
  const { ref, width } = useElementSize()
  const frame = width > 0 ? frameOf(outlook, { width, timeZone }) : null
  return (
    <div ref={ref} style={{ height: chartHeight }}>
      {frame && (
        <svg
          width={width}
          height={chartHeight}
          role="img"
          aria-label={`Density chart. ${outlook.sentence}`}
          className={charts.chart}
        >
          <Axes frame={frame} timeZone={timeZone} />
          <Bands outlook={outlook} frame={frame} />
          <Harvests outlook={outlook} frame={frame} />
          <Counts outlook={outlook} frame={frame} />
          {hasEggs && <EggStrip outlook={outlook} frame={frame} />}
          <line
            className={charts.axis}
            x1={margin.left}
            x2={frame.right}
            y1={tops.eggs + lanes.eggs}
            y2={tops.eggs + lanes.eggs}
          />
        </svg>
      )}
    </div>
  )
}

type Part = { outlook: CultureOutlook; frame: Frame }

function Axes({ frame, timeZone }: { frame: Frame; timeZone: string }) {
  const voice = useVoice()
  return (
    <g>
      <ValueLines
        {...{ ticks: frame.ticks, y: frame.y, left: margin.left, right: frame.right }}
        say={(tick) => sayNumber(tick, voice)}
      />
      <text className={charts.tick} x={margin.left + 4} y={tops.density + 11}>
        per mL
      </text>
      {frame.days.map((day) => (
        <text key={day.at} className={charts.tick} x={day.x} y={tops.dates + 18} textAnchor="middle">
          {sayDayMonth(toPlainDate(day.at, timeZone), voice)}
        </text>
      ))}
      {frame.nowX !== null && (
        <g>
          <line className={styles.now} x1={frame.nowX} x2={frame.nowX} y1={tops.density} y2={tops.dates} />
          <text className={charts.tick} x={frame.nowX + 5} y={tops.density + lanes.density - 6}>
            now
          </text>
        </g>
      )}
    </g>
  )
}

function Bands({ outlook, frame }: Part) {
  const { x, y } = frame
  const middle = line<{ at: string; p50: number }>(
    (point) => x(point.at),
    (point) => y(point.p50),
  )
  const wide = area<{ at: string; p10: number; p90: number }>(
    (point) => x(point.at),
    (point) => y(point.p10),
    (point) => y(point.p90),
  )
  const narrow = area<{ at: string; p25: number; p75: number }>(
    (point) => x(point.at),
    (point) => y(point.p25),
    (point) => y(point.p75),
  )
  return (
    <g>
      <path className={styles.bandBehind} d={wide(outlook.behind) ?? ''} />
      <path className={styles.bandAhead} d={wide(outlook.ahead) ?? ''} />
      <path className={styles.bandAheadNarrow} d={narrow(outlook.ahead) ?? ''} />
      <path className={styles.middle} d={middle(outlook.behind) ?? ''} />
      <path className={styles.middleAhead} d={middle(outlook.ahead) ?? ''} />
    </g>
  )
}

function Harvests({ outlook, frame }: Part) {
  return (
    <g>
      <text className={charts.tick} x={margin.left - 6} y={12} textAnchor="end">
        taken
      </text>
      <line className={charts.axis} x1={margin.left} x2={frame.right} y1={1} y2={1} />
      {outlook.harvests.map((harvest) => (
        <rect
          key={harvest.factId}
          className={styles.harvest}
          x={frame.x(harvest.at) - frame.bar / 2}
          y={1}
          width={frame.bar}
          height={Math.max(3, Math.min(1, harvest.share / 0.5) * (lanes.harvest - 4))}
        />
      ))}
    </g>
  )
}

function Counts({ outlook, frame }: Part) {
  return (
    <g>
      {outlook.counts.map((count) => (
        <g key={count.factId}>
          <line
            className={charts.error}
            x1={frame.x(count.at)}
            x2={frame.x(count.at)}
            y1={frame.y(count.upperPerMl)}
            y2={frame.y(count.lowerPerMl)}
          />
          <circle
            className={charts.count}
            cx={frame.x(count.at)}
            cy={frame.y(count.densityPerMl)}
            r={Math.max(3, Math.min(5, frame.bar))}
          />
        </g>
      ))}
    </g>
  )
}

function EggStrip({ outlook, frame }: Part) {
  const voice = useVoice()
  const counted = outlook.counts.flatMap((count) =>
    count.eggRatio === null ? [] : [{ ...count, ratio: count.eggRatio }],
  )
  const top = Math.max(0.5, ...counted.map((count) => count.ratio))
  return (
    <g>
      <text className={charts.tick} x={margin.left - 6} y={tops.eggs + lanes.eggs / 2 + 4} textAnchor="end">
        eggs
      </text>
      {counted.map((count) => {
        const height = Math.max(2, (count.ratio / top) * (lanes.eggs - 14))
        return (
          <g key={count.factId}>
            <rect
              className={styles.eggs}
              x={frame.x(count.at) - frame.bar / 2}
              y={tops.eggs + lanes.eggs - height}
              width={frame.bar}
              height={height}
            />
            <title>{`${sayNumber(count.ratio, voice)} eggs a female`}</title>
          </g>
        )
      })}
      {counted.length === 0 && (
        <text className={charts.tick} x={margin.left + 4} y={tops.eggs + lanes.eggs / 2 + 4}>
          not looked at
        </text>
      )}
    </g>
  )
}
