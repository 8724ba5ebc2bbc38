import type { ReactNode } from 'react'
import styles from './forms.module.css'

/** Short fields side by side where there is room. */
export function Row({ children }: { children: ReactNode }) {
  return <div className={styles.row}>{children}</div>
}
