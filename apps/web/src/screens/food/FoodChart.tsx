'use client'

import type { FoodOutlook } from '@fryward/shared'
import { sayDayMonth, sayNarrow } from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import { useId } from 'react'
import charts from '@/base/charts/charts.module.css'
import { ValueLines } from '@/base/charts/ValueLines.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import { Moon } from '@/base/ui/Moon.tsx'
import { ConeGlyph } from '@/parts/cultures/ConeGlyph.tsx'
import styles from './food.module.css'
import { bandPath, type FoodFrame, foodFrame, middlePath } from './food-frame.ts'
import { chartHeight, lanes, margin } from './food-lanes.ts'
import { type BandDay, hatchNightsOf } from './food-nights.ts'
import { hatchDaysOf } from './hatch-days.ts'

type Props = {
  outlook: FoodOutlook
  /** The days after a change; the picture then shows these, with the food before as a thin line. */
  after: readonly BandDay[] | null
  worryDate: string | null
  label: string
}

/** What the mouths want and what the cultures could give, as two bands on one axis; nights of hatching as moons above, hatches of Artemia as cones. */
export function FoodChart({ outlook, after, worryDate, label }: Props) {
  const { ref, width } = useElementSize()
  const days: readonly BandDay[] = after ?? outlook.days
  const frame = width > 0 ? foodFrame(days, outlook.days, width) : null
  return (
    <div ref={ref} style={{ height: chartHeight }}>
      {frame && (
        <svg width={width} height={chartHeight} role="img" aria-label={label} className={charts.chart}>
          <Axes frame={frame} days={days} />
          <Bands frame={frame} days={days} before={after ? outlook.days : null} />
          <Moons frame={frame} outlook={outlook} />
          <Cones frame={frame} outlook={outlook} />
          <Worry frame={frame} days={days} date={worryDate} />
        </svg>
      )}
    </div>
  )
}

function Axes({ frame, days }: { frame: FoodFrame; days: readonly BandDay[] }) {
  const voice = useVoice()
  return (
    <g>
      <ValueLines
        {...{ ticks: frame.ticks, y: frame.y, left: margin.left, right: frame.right }}
        say={(tick) => sayNarrow(tick, voice)}
      />
      {frame.dated.map((day) => (
        <text key={day} className={charts.tick} x={frame.x(day)} y={frame.floor + 18} textAnchor="middle">
          {sayDayMonth(days[day]!.date, voice)}
        </text>
      ))}
    </g>
  )
}

type BandsProps = { frame: FoodFrame; days: readonly BandDay[]; before: readonly BandDay[] | null }

function Bands({ frame, days, before }: BandsProps) {
  const id = useId()
  const wanted = days.map((day) => day.wanted)
  const food = days.map((day) => day.couldGive)
  return (
    <g>
      <defs>
        <clipPath id={`${id}-frame`}>
          <rect x={margin.left} y={frame.top} width={Math.max(0, frame.right - margin.left)} height={lanes.bands} />
        </clipPath>
        <pattern id={`${id}-mouths`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className={styles.mouthsLine} x1="0" y1="0" x2="0" y2="7" />
        </pattern>
      </defs>
      <g clipPath={`url(#${id}-frame)`}>
        <path className={styles.foodBand} d={bandPath(frame, food)} />
        <path fill={`url(#${id}-mouths)`} d={bandPath(frame, wanted)} />
        {before && (
          <path
            className={styles.foodBefore}
            d={middlePath(
              frame,
              before.map((day) => day.couldGive),
            )}
          />
        )}
        {before && (
          <path
            className={styles.mouthsBefore}
            d={middlePath(
              frame,
              before.map((day) => day.wanted),
            )}
          />
        )}
        <path className={styles.food} d={middlePath(frame, food)} />
        <path className={styles.mouths} d={middlePath(frame, wanted)} />
      </g>
    </g>
  )
}

function Moons({ frame, outlook }: { frame: FoodFrame; outlook: FoodOutlook }) {
  const size = Math.min(30, Math.max(16, frame.x(1) - frame.x(0)))
  return (
    <g>
      {hatchNightsOf(outlook)
        // A night lies between its day and the next, of which the last has none.
        .filter(({ day }) => day < outlook.days.length - 1)
        .map(({ day, probability }) => (
          <g
            key={day}
            transform={`translate(${frame.x(day) + (frame.x(1) - frame.x(0)) / 2 - size / 2}, ${(lanes.moons - size) / 2})`}
          >
            <Moon probability={probability} size={size} />
          </g>
        ))}
    </g>
  )
}

function Cones({ frame, outlook }: { frame: FoodFrame; outlook: FoodOutlook }) {
  const { timeZone } = useVoice()
  const size = Math.min(26, Math.max(15, frame.x(1) - frame.x(0)))
  return (
    <g>
      {hatchDaysOf(outlook, timeZone).map(({ day, hatch }) => (
        <g
          key={hatch.id}
          transform={`translate(${frame.x(day) - size / 2}, ${lanes.moons + (lanes.cones - size) / 2})`}
        >
          <ConeGlyph size={size} standing={hatch.standing} />
        </g>
      ))}
    </g>
  )
}

function Worry({ frame, days, date }: { frame: FoodFrame; days: readonly BandDay[]; date: string | null }) {
  const day = days.findIndex((each) => each.date === date)
  if (day < 0) return null
  const x = frame.x(day)
  return (
    <g>
      <line className={styles.worryLine} x1={x} x2={x} y1={frame.top} y2={frame.floor} />
      <path
        className={styles.worryMark}
        d={`M${x} ${frame.top - 2}l8 -13h-16z`}
        transform={`rotate(180 ${x} ${frame.top - 8})`}
      />
    </g>
  )
}
