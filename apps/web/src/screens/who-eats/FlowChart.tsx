'use client'

import type { FoodOutlook } from '@fryward/shared'
import { sayNumber, sayQuantity } from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import { useId } from 'react'
import charts from '@/base/charts/charts.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import { ConeGlyph } from '@/parts/cultures/ConeGlyph.tsx'
import { type Bar, flowOf } from './flow-frame.ts'
import styles from './who-eats.module.css'

export type FlowDay = Pick<FoodOutlook['days'][number], 'gives' | 'cultures' | 'eaters'>
type Hatch = NonNullable<FoodOutlook['hatches']>[number]
export type Ends = {
  /** `hatch` of a cone of Artemia, which is drawn before its name. */
  cultures: { id: string; name: string; note: string; hatch?: Hatch['standing'] }[]
  eaters: { id: string; name: string; note: string }[]
}

const barWidth = 14

/** Streams from the cultures on the left to those who eat on the right; a gap is hatched where need is not met. */
export function FlowChart({ day, ends, label }: { day: FlowDay; ends: Ends; label: string }) {
  const { ref, width } = useElementSize()
  const ids = { cultures: ends.cultures.map(({ id }) => id), eaters: ends.eaters.map(({ id }) => id) }
  const flow = flowOf(day, ids, { left: barWidth, right: Math.max(barWidth, width - barWidth) })
  return (
    <div ref={ref} style={{ minHeight: flow.height }}>
      {width > 0 && (
        <svg width={width} height={flow.height} role="img" aria-label={label} className={charts.chart}>
          {flow.streams.map(({ from, to, d, width: thick }) => (
            <path key={`${from} ${to}`} className={styles.stream} d={d} strokeWidth={thick} />
          ))}
          {flow.cultures.map((bar, index) => (
            <CultureBar key={bar.id} bar={bar} end={ends.cultures[index]!} day={day} />
          ))}
          {flow.eaters.map((bar, index) => (
            <EaterBar key={bar.id} bar={bar} end={ends.eaters[index]!} day={day} x={width - barWidth} />
          ))}
        </svg>
      )}
    </div>
  )
}

type BarProps = { bar: Bar; end: Ends['cultures'][number]; day: FlowDay }

function CultureBar({ bar, end, day }: BarProps) {
  const voice = useVoice()
  const fedL = day.cultures.find(({ id }) => id === bar.id)?.fedL ?? 0
  const y = bar.y + bar.height
  return (
    <g>
      <rect
        className={styles.culture}
        data-idle={bar.filled === 0 || undefined}
        x={0}
        y={bar.y}
        width={barWidth}
        height={bar.height}
        rx={3}
      />
      {end.hatch && (
        <g transform={`translate(0, ${y + 2})`}>
          <ConeGlyph size={20} standing={end.hatch} />
        </g>
      )}
      <text className={styles.name} x={end.hatch ? 24 : 0} y={y + 18}>
        {end.name}
      </text>
      <text className={charts.tick} x={0} y={y + 35}>
        {fedL > 0 ? `gives ${sayQuantity({ value: fedL, unit: 'L' }, voice)}` : end.note}
      </text>
    </g>
  )
}

function EaterBar({ bar, end, day, x }: BarProps & { x: number }) {
  const voice = useVoice()
  const id = useId()
  const { wanted = 0 } = day.eaters.find((each) => each.id === bar.id) ?? {}
  const y = bar.y + bar.height
  const missing = Math.max(0, bar.height - bar.filled)
  return (
    <g>
      <defs>
        <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line className={styles.gapLine} x1="0" y1="0" x2="0" y2="6" />
        </pattern>
      </defs>
      <rect className={styles.eater} x={x} y={bar.y} width={barWidth} height={bar.height} rx={3} />
      {missing > 1 && (
        <rect
          className={styles.gap}
          fill={`url(#${id})`}
          x={x - 40}
          y={y - missing}
          width={barWidth + 40}
          height={missing}
        />
      )}
      <text className={styles.name} x={x + barWidth} y={y + 18} textAnchor="end">
        {end.name}
      </text>
      <text className={charts.tick} x={x + barWidth} y={y + 35} textAnchor="end">
        {end.note ? `${end.note}, ` : ''}wants {sayNumber(wanted, voice)}
      </text>
    </g>
  )
}
