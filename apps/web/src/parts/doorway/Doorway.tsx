import type { ReactNode } from 'react'
import styles from './doorway.module.css'

/** The frame of the pages before a room: one narrow column with the name of the house above. */
export function Doorway({ title, lead, children }: { title: string; lead?: ReactNode; children: ReactNode }) {
  return (
    <main className={styles.doorway}>
      <p className={styles.house}>
        <span className={styles.mark} aria-hidden="true" />
        Fryward
      </p>
      <h1>{title}</h1>
      {lead && <p className={styles.lead}>{lead}</p>}
      {children}
    </main>
  )
}
