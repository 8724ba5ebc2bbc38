import type { ReactNode } from 'react'
import styles from './charts.module.css'

type Props = { label: string; headings: string[]; rows: { key: string; cells: ReactNode[] }[] }

/** A chart for those who read: the same numbers as a table, under a fold. */
export function FoldedTable({ label, headings, rows }: Props) {
  return (
    <details>
      <summary className={styles.summary}>The same as a table</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable by keyboard */}
      <section className={styles.scroll} tabIndex={0} aria-label={label}>
        <table className={styles.table}>
          <thead>
            <tr>
              {headings.map((heading) => (
                <th key={heading} scope="col">
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map(({ key, cells }) => (
              <tr key={key}>
                {cells.map((cell, i) => (
                  <td key={headings[i]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  )
}
