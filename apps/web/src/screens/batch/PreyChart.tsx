'use client'

import { sayNumber, sayWeekdayDay, toPlainDate } from '@fryward/words'
import { useElementSize } from '@mantine/hooks'
import charts from '@/base/charts/charts.module.css'
import { ValueLines } from '@/base/charts/ValueLines.tsx'
import { midnightsBetween } from '@/base/dates/midnights.ts'
import { useVoice } from '@/base/room/room-context.tsx'
import styles from './prey.module.css'
import type { HeldBand, PreyCount, PreyFeed } from './prey-chart.ts'
import { type PreyFrame, preyFrame } from './prey-frame.ts'
import { preyChartHeight, preyMargin, preyTops } from './prey-lanes.ts'

type Props = {
  counts: PreyCount[]
  feeds: PreyFeed[]
  held: HeldBand | undefined
  span: { start: Date; end: Date }
  timeZone: string
  sentence: string
}

/** Counts as dots (Artemia as squares) with the span of their samples, the band to hold behind, feeds as ticks below. */
export function PreyChart({ counts, feeds, held, span, timeZone, sentence }: Props) {
  const { ref, width } = useElementSize()
  const frame = width > 0 ? preyFrame({ counts, held, span, width }) : null
  return (
    <>
      <div ref={ref} style={{ height: preyChartHeight }}>
        {frame && (
          <svg
            width={width}
            height={preyChartHeight}
            role="img"
            aria-label={`Prey chart. ${sentence}`}
            className={charts.chart}
          >
            {held && <Band held={held} frame={frame} />}
            <Axes frame={frame} midnights={midnightsBetween(span.start, span.end, timeZone)} timeZone={timeZone} />
            <Feeds feeds={feeds} frame={frame} />
            <Counts counts={counts} frame={frame} />
          </svg>
        )}
      </div>
      <Key counts={counts} held={held} />
    </>
  )
}

function Band({ held, frame }: { held: HeldBand; frame: PreyFrame }) {
  const { x1, x2 } = { x1: preyMargin.left, x2: frame.right }
  return (
    <g>
      <rect
        className={styles.band}
        x={x1}
        width={x2 - x1}
        y={frame.y(held.most)}
        height={frame.y(held.lowest) - frame.y(held.most)}
      />
      <line className={styles.target} x1={x1} x2={x2} y1={frame.y(held.target)} y2={frame.y(held.target)} />
    </g>
  )
}

function Axes({ frame, midnights, timeZone }: { frame: PreyFrame; midnights: string[]; timeZone: string }) {
  const voice = useVoice()
  return (
    <g>
      <ValueLines
        {...{ ticks: frame.ticks, y: frame.y, left: preyMargin.left, right: frame.right }}
        say={(tick) => sayNumber(tick, voice)}
      />
      {midnights.map((at, i) => (
        <g key={at}>
          <line
            className={styles.midnight}
            x1={frame.x(at)}
            x2={frame.x(at)}
            y1={preyMargin.top}
            y2={preyTops.feedsEnd}
          />
          <text
            className={charts.tick}
            x={((i === midnights.length - 1 ? frame.right : frame.x(midnights[i + 1] ?? at)) + frame.x(at)) / 2}
            y={preyTops.dates + 14}
            textAnchor="middle"
          >
            {sayWeekdayDay(toPlainDate(at, timeZone), voice)}
          </text>
        </g>
      ))}
      <line className={charts.axis} x1={preyMargin.left} x2={frame.right} y1={preyTops.floor} y2={preyTops.floor} />
    </g>
  )
}

function Feeds({ feeds, frame }: { feeds: PreyFeed[]; frame: PreyFrame }) {
  return (
    <g>
      <text className={charts.tick} x={preyMargin.left - 6} y={preyTops.feeds + 15} textAnchor="end">
        fed
      </text>
      {feeds.map((feed) => (
        <line
          key={feed.factId}
          className={styles.feed}
          x1={frame.x(feed.at)}
          x2={frame.x(feed.at)}
          y1={preyTops.feeds}
          y2={preyTops.feedsEnd}
        />
      ))}
    </g>
  )
}

function Counts({ counts, frame }: { counts: PreyCount[]; frame: PreyFrame }) {
  return (
    <g>
      {counts.map((count) => (
        <g key={count.factId}>
          <line
            className={charts.error}
            x1={frame.x(count.at)}
            x2={frame.x(count.at)}
            y1={frame.y(count.highestPerMl)}
            y2={frame.y(count.lowestPerMl)}
          />
          <Mark of={count.of} x={frame.x(count.at)} y={frame.y(count.perMl)} />
        </g>
      ))}
    </g>
  )
}

/** Told apart by shape, not by colour. */
function Mark({ of, x, y }: { of: PreyCount['of']; x: number; y: number }) {
  if (of === 'prey_artemia') return <rect className={charts.count} x={x - 4.5} y={y - 4.5} width={9} height={9} />
  return <circle className={charts.count} cx={x} cy={y} r={5} />
}

function Key({ counts, held }: { counts: PreyCount[]; held: HeldBand | undefined }) {
  const voice = useVoice()
  const hasArtemia = counts.some((count) => count.of === 'prey_artemia')
  return (
    <p className={styles.key}>
      Dots are counts of rotifers{hasArtemia && ', squares of Artemia'}, their bars from the thinnest to the densest
      sample; ticks below are feeds.
      {held &&
        ` The band is ${sayNumber(held.lowest, voice)} to ${sayNumber(held.most, voice)} per mL, its line the ${sayNumber(held.target, voice)} to top up to.`}
    </p>
  )
}
