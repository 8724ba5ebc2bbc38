'use client'

import { sayMoment } from '@/dates/say.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { formatNumber } from '@/quantities/format-number.ts'
import styles from './prey.module.css'
import type { PreyCount } from './prey-chart.ts'
import { sayPreyKind } from './say-prey.ts'

/** The chart for those who read, newest first. */
export function PreyTable({ counts, now }: { counts: PreyCount[]; now: Date }) {
  const { timeZone } = useRoom()
  return (
    <details>
      <summary className={styles.summary}>The same as a table</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard */}
      <section className={styles.scroll} tabIndex={0} aria-label="Counts of prey as a table">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">What</th>
              <th scope="col">Per mL</th>
              <th scope="col">Its samples</th>
            </tr>
          </thead>
          <tbody>
            {counts.toReversed().map((count) => (
              <tr key={count.factId}>
                <td>{sayMoment(count.at, now, timeZone)}</td>
                <td>{sayPreyKind(count.of)}</td>
                <td>{formatNumber(count.perMl)}</td>
                <td>
                  {count.samples === 1
                    ? 'one'
                    : `${formatNumber(count.lowestPerMl)} to ${formatNumber(count.highestPerMl)} in ${count.samples}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  )
}
