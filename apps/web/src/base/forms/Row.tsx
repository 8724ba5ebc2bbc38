import type { ReactNode } from 'react'
import styles from './forms.module.css'

/** Short fields side by side where there is room. */
export function Row({ children, isTight = false }: { children: ReactNode; isTight?: boolean }) {
  return <div className={isTight ? styles.tightRow : styles.row}>{children}</div>
}
