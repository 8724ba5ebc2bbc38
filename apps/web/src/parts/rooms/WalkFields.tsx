'use client'

import { type Station, StationOrderSchema } from '@fryward/shared'
import { stationLabels } from '@fryward/words'
import styles from './rooms.module.css'

type Props = { order: Station[]; onOrder: (order: Station[]) => void }

/** The stations in the order they are walked, each moved up or down by one; quarantine stays behind all that is healthy. */
export function WalkFields({ order, onOrder }: Props) {
  return (
    <fieldset className={styles.rounds}>
      <legend className={styles.legend}>The walk</legend>
      <p className={styles.steps}>
        Clean before dirty: what is sick comes after all that is healthy, so nothing goes behind quarantine.
      </p>
      <ol className={styles.walk}>
        {order.map((station, i) => (
          <li key={station}>
            <span>{stationLabels[station]}</span>
            <Move order={order} from={i} by={-1} onOrder={onOrder} />
            <Move order={order} from={i} by={1} onOrder={onOrder} />
          </li>
        ))}
      </ol>
    </fieldset>
  )
}

function Move({ order, from, by, onOrder }: Props & { from: number; by: -1 | 1 }) {
  const moved = swapped(order, from, from + by)
  const station = order[from]
  if (station === undefined) return null
  return (
    <button
      type="button"
      className={styles.away}
      disabled={moved === undefined}
      aria-label={`${stationLabels[station]}: walk it ${by < 0 ? 'earlier' : 'later'}`}
      onClick={() => moved && onOrder(moved)}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <path
          d={by < 0 ? 'm5 15 7-7 7 7' : 'm5 9 7 7 7-7'}
          fill="none"
          stroke="currentColor"
          strokeWidth="2.4"
          strokeLinecap="round"
        />
      </svg>
    </button>
  )
}

/** The order with two stations in each other's place; undefined where the contract has no such walk. */
function swapped(order: Station[], from: number, to: number): Station[] | undefined {
  const [one, other] = [order[from], order[to]]
  if (one === undefined || other === undefined) return undefined
  const moved = StationOrderSchema.safeParse(order.with(from, other).with(to, one))
  return moved.success ? moved.data : undefined
}
