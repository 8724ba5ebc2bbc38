'use client'

import type { ComparedGroup, SurvivalComparison } from '@fryward/shared'
import { sayComing, sayWhole } from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import { area, curveStepAfter, line } from 'd3-shape'
import charts from '@/base/charts/charts.module.css'
import { ValueLines } from '@/base/charts/ValueLines.tsx'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './curves.module.css'
import { type CurvePlace, type CurvesFrame, curvesFrame, placesOf } from './curves-frame.ts'
import { curvesHeight, curvesMargin, curvesTops, letterOf, riskRow } from './curves-lanes.ts'

type Props = { compared: SurvivalComparison; groups: readonly ComparedGroup[]; sentence: string }

/** Survival curves as steps with their bands, a letter and a stroke of its own for each, and who was at risk below. */
export function CurvesChart({ compared, groups, sentence }: Props) {
  const { ref, width } = useElementSize()
  const frame = width > 0 ? curvesFrame(groups, width) : null
  const height = curvesHeight(groups.length)
  return (
    <div ref={ref} style={{ height }}>
      {frame && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={`Survival curves. ${sentence}`}
          className={charts.chart}
        >
          <Axes frame={frame} compared={compared} />
          {groups.map((group, index) => (
            <Curve key={group.key} group={group} index={index} frame={frame} />
          ))}
          <AtRisk groups={groups} days={compared.days} frame={frame} />
        </svg>
      )}
    </div>
  )
}

function Axes({ frame, compared }: { frame: CurvesFrame; compared: SurvivalComparison }) {
  const voice = useVoice()
  return (
    <g>
      <ValueLines
        {...{ ticks: frame.shares, y: frame.y, left: curvesMargin.left, right: frame.right }}
        say={(share) => `${sayWhole(share * 100, voice)}%`}
      />
      <line
        className={charts.axis}
        x1={curvesMargin.left}
        x2={frame.right}
        y1={curvesTops.floor}
        y2={curvesTops.floor}
      />
      {compared.days.map((day) => (
        <text key={day} className={charts.tick} x={frame.x(day)} y={curvesTops.floor + 17} textAnchor="middle">
          {sayWhole(day, voice)}
        </text>
      ))}
      <text className={charts.tick} x={curvesMargin.left} y={curvesTops.days + 13}>
        days since the {sayComing(compared.cares)}
      </text>
    </g>
  )
}

function Curve({ group, index, frame }: { group: ComparedGroup; index: number; frame: CurvesFrame }) {
  const places = placesOf(group)
  const band = area<CurvePlace>()
    .curve(curveStepAfter)
    .x(({ ageDays }) => frame.x(ageDays))
    .y0(({ lower }) => frame.y(lower))
    .y1(({ upper }) => frame.y(upper))
  const steps = line<CurvePlace>()
    .curve(curveStepAfter)
    .x(({ ageDays }) => frame.x(ageDays))
    .y(({ share }) => frame.y(share))
  const end = places.at(-1)
  return (
    <g data-line={index}>
      <path className={styles.band} data-line={index} d={band(places) ?? ''} />
      <path className={styles.line} data-line={index} d={steps(places) ?? ''} />
      {end && (
        <text className={styles.letter} x={frame.x(end.ageDays) + 6} y={frame.y(end.share) + 5}>
          {letterOf(index)}
        </text>
      )}
    </g>
  )
}

function AtRisk({
  groups,
  days,
  frame,
}: {
  groups: readonly ComparedGroup[]
  days: readonly number[]
  frame: CurvesFrame
}) {
  const voice = useVoice()
  return (
    <g>
      {groups.map((group, row) => {
        const y = curvesTops.atRisk + row * riskRow + 14
        return (
          <g key={group.key}>
            <text className={styles.letter} x={4} y={y}>
              {letterOf(row)}
            </text>
            {days.map((day, place) => (
              <text key={day} className={charts.tick} x={frame.x(day)} y={y} textAnchor="middle">
                {sayWhole(Math.round(group.atRisk[place] ?? 0), voice)}
              </text>
            ))}
          </g>
        )
      })}
    </g>
  )
}
