import charts from './charts.module.css'

type Props = {
  ticks: readonly number[]
  y: (tick: number) => number
  left: number
  right: number
  say: (tick: number) => string
}

/** A level line for each tick, and what it stands for to the left of it. */
export const ValueLines = ({ ticks, y, left, right, say }: Props) =>
  ticks.map((tick) => (
    <g key={tick}>
      <line className={charts.grid} x1={left} x2={right} y1={y(tick)} y2={y(tick)} />
      <text className={charts.tick} x={left - 6} y={y(tick) + 4} textAnchor="end">
        {say(tick)}
      </text>
    </g>
  ))
