import type { CultureOutlook } from '@fryward/shared'
import { sayDate, sayTime, toPlainDate } from '@/dates/say.ts'
import { formatNumber } from '@/quantities/format-number.ts'
import styles from './cultures.module.css'

/** The chart for those who read. */
export function OutlookTable({ outlook, timeZone }: { outlook: CultureOutlook; timeZone: string }) {
  if (outlook.counts.length === 0) return null
  const day = (at: string) => sayDate(toPlainDate(at, timeZone))
  return (
    <details>
      <summary className={styles.summary}>The same as a table</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard */}
      <section className={styles.scroll} tabIndex={0} aria-label="Counts and forecast as a table">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">Per mL</th>
              <th scope="col">Between</th>
              <th scope="col">Eggs a female</th>
            </tr>
          </thead>
          <tbody>
            {outlook.counts.map((count) => (
              <tr key={count.factId}>
                <td>
                  {day(count.at)} {sayTime(count.at, timeZone)}
                </td>
                <td>{formatNumber(count.densityPerMl)}</td>
                <td>
                  {formatNumber(count.lowerPerMl)} and {formatNumber(count.upperPerMl)}
                </td>
                <td>{count.eggRatio === null ? '–' : formatNumber(count.eggRatio)}</td>
              </tr>
            ))}
            {outlook.ahead.map((point) => (
              <tr key={point.at}>
                <td>{day(point.at)}, forecast</td>
                <td>{formatNumber(point.p50)}</td>
                <td>
                  {formatNumber(point.p10)} and {formatNumber(point.p90)}
                </td>
                <td>–</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  )
}
