'use client'

import type { ClutchLife } from '@fryward/shared'
import { broodWords, sayDayMonth, sayNumber, sayStage, sayWhole, toPlainDate } from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import { area, curveStepAfter, line } from 'd3-shape'
import charts from '@/base/charts/charts.module.css'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './life.module.css'
import { type LifeFrame, lifeFrame, lifeSpan, lossesByDate } from './life-frame.ts'
import { type LifeTops, lifeMargin, lifeRow, lifeTops } from './life-lanes.ts'
import { foodRows, stageRows } from './life-rows.ts'

type Props = { life: ClutchLife; from: string; sentence: string }
type Part = { life: ClutchLife; frame: LifeFrame; tops: LifeTops }

/**
 * One clutch on one line of time: stages expected (outlined) and seen (filled), numbers left between the least and the
 * most they can be, losses hanging below, what it ate from where, and how warm it was.
 */
export function LifeLine({ life, from, sentence }: Props) {
  const { ref, width } = useElementSize()
  const tops = lifeTops({ stages: stageRows(life).length, foods: foodRows(life).length })
  const span = lifeSpan(life, from)
  const frame = width > 0 ? lifeFrame(life, { width, tops, span }) : null
  return (
    <div ref={ref} style={{ height: tops.height }}>
      {frame && (
        <svg
          width={width}
          height={tops.height}
          role="img"
          aria-label={`Life line. ${sentence}`}
          className={charts.chart}
        >
          <Dates life={life} frame={frame} tops={tops} />
          <Stages life={life} frame={frame} tops={tops} />
          <Numbers life={life} frame={frame} tops={tops} />
          <Losses life={life} frame={frame} tops={tops} />
          <Foods life={life} frame={frame} tops={tops} />
          <Temperatures life={life} frame={frame} tops={tops} />
        </svg>
      )}
    </div>
  )
}

function RowLabel({ y, children }: { y: number; children: string }) {
  return (
    <text className={charts.tick} x={lifeMargin.left - 8} y={y} textAnchor="end">
      {children}
    </text>
  )
}

function Dates({ life, frame, tops }: Part) {
  const voice = useVoice()
  return (
    <g>
      {frame.ticks.map(({ date, ageDays }) => (
        <g key={date}>
          <line className={styles.day} x1={frame.x(date)} x2={frame.x(date)} y1={tops.stages} y2={tops.dates} />
          <text className={charts.tick} x={frame.x(date)} y={tops.dates + 16} textAnchor="middle">
            {ageDays === null ? sayDayMonth(date, voice) : sayWhole(ageDays, voice)}
          </text>
        </g>
      ))}
      {life.row.bornOn !== null && <RowLabel y={tops.dates + 16}>day of life</RowLabel>}
    </g>
  )
}

function Stages({ life, frame, tops }: Part) {
  return (
    <g>
      {stageRows(life).map(({ stage, seenOn, expected }, index) => {
        const y = tops.stages + index * lifeRow + lifeRow / 2
        return (
          <g key={stage}>
            <RowLabel y={y + 4}>{sayStage(stage, life.row.care)}</RowLabel>
            {expected && (
              <rect
                className={styles.expected}
                x={frame.x(expected.from) - 4}
                width={Math.max(8, frame.x(expected.to) - frame.x(expected.from) + 8)}
                y={y - 6}
                height={12}
                rx={6}
              />
            )}
            {seenOn !== null && <circle className={styles.seen} cx={frame.x(seenOn)} cy={y} r={4.5} />}
          </g>
        )
      })}
    </g>
  )
}

function Numbers({ life, frame, tops }: Part) {
  const voice = useVoice()
  const { y, ticks } = frame.number
  const known = life.numbers.filter(({ atLeast, atMost }) => atLeast !== null || atMost !== null)
  if (known.length === 0)
    return (
      <text className={charts.tick} x={lifeMargin.left + 4} y={(tops.numbers + tops.floor) / 2}>
        {life.numbers.length === 0 ? `no ${broodWords(life.row.care).many} yet` : 'how many are left, nobody knows'}
      </text>
    )
  const between = area<(typeof known)[number]>()
    .curve(curveStepAfter)
    .x(({ on }) => frame.x(on))
    .y0(({ atLeast }) => y(atLeast ?? 0))
    .y1(({ atMost, atLeast }) => y(atMost ?? atLeast ?? 0))
  const edge = line<(typeof known)[number]>()
    .curve(curveStepAfter)
    .x(({ on }) => frame.x(on))
    .y(({ atMost, atLeast }) => y(atMost ?? atLeast ?? 0))
  return (
    <g>
      {ticks.map((tick) => (
        <g key={tick}>
          <line className={charts.grid} x1={lifeMargin.left} x2={frame.right} y1={y(tick)} y2={y(tick)} />
          <RowLabel y={y(tick) + 4}>{sayNumber(tick, voice)}</RowLabel>
        </g>
      ))}
      <text className={charts.tick} x={frame.right - 4} y={tops.numbers + 12} textAnchor="end">
        left
      </text>
      <path className={styles.between} d={between(known) ?? ''} />
      <path className={styles.edge} d={edge(known) ?? ''} />
      {known
        .filter(({ isCounted, atLeast }) => isCounted && atLeast !== null)
        .map(({ on, atLeast }) => (
          <circle key={on} className={charts.count} cx={frame.x(on)} cy={y(atLeast ?? 0)} r={4.5} />
        ))}
    </g>
  )
}

function Losses({ life, frame, tops }: Part) {
  return (
    <g>
      <RowLabel y={tops.losses + 12}>found dead</RowLabel>
      <line className={charts.axis} x1={lifeMargin.left} x2={frame.right} y1={tops.losses} y2={tops.losses} />
      {lossesByDate(life).map(({ on, number }) => (
        <rect
          key={on}
          className={styles.loss}
          x={frame.x(on) - 2.5}
          y={tops.losses}
          width={5}
          height={frame.loss(number)}
        />
      ))}
    </g>
  )
}

function Foods({ life, frame, tops }: Part) {
  return (
    <g>
      {foodRows(life).map(({ key, label, spans }, index) => {
        const y = tops.food + index * lifeRow + lifeRow / 2
        return (
          <g key={key}>
            <RowLabel y={y + 4}>{label.length > 14 ? `${label.slice(0, 13)}…` : label}</RowLabel>
            {spans.map(({ from, to }) => (
              <line
                key={from}
                className={styles.food}
                x1={frame.x(from)}
                x2={Math.max(frame.x(to), frame.x(from) + 4)}
                y1={y}
                y2={y}
              />
            ))}
          </g>
        )
      })}
    </g>
  )
}

function Temperatures({ life, frame, tops }: Part) {
  const voice = useVoice()
  const { temperature } = frame
  if (!temperature) return null
  return (
    <g>
      <RowLabel y={tops.temperature + 9}>{`${sayNumber(temperature.most, voice)} °C`}</RowLabel>
      <RowLabel y={tops.temperatureEnd + 2}>{`${sayNumber(temperature.least, voice)} °C`}</RowLabel>
      {life.setPoints.map(({ tank, temperatureC }) => (
        <line
          key={tank.id}
          className={styles.setPoint}
          x1={lifeMargin.left}
          x2={frame.right}
          y1={temperature.y(temperatureC)}
          y2={temperature.y(temperatureC)}
        />
      ))}
      {life.temperatures.map(({ at, tankId, temperatureC }) => (
        <circle
          key={`${at} ${tankId}`}
          className={styles.reading}
          cx={frame.x(toPlainDate(at, voice.timeZone))}
          cy={temperature.y(temperatureC)}
          r={3}
        />
      ))}
    </g>
  )
}
