import type { ReactNode } from 'react'
import styles from './page.module.css'

/** A page's head and body: one h1, what stands under it, and the content. */
export function Page({
  title,
  lead,
  aside,
  isFullWidth = false,
  children,
}: {
  title: ReactNode
  lead?: ReactNode
  aside?: ReactNode
  /** For pages that lay out their own columns. */
  isFullWidth?: boolean
  children: ReactNode
}) {
  return (
    <div className={styles.page} data-full={isFullWidth || undefined}>
      <header className={styles.head}>
        <h1>{title}</h1>
        {aside}
        {lead && <div className={styles.lead}>{lead}</div>}
      </header>
      {children}
    </div>
  )
}

export function Section({ title, action, children }: { title: string; action?: ReactNode; children: ReactNode }) {
  return (
    <section className={styles.section}>
      <div className={styles.sectionHead}>
        <h2>{title}</h2>
        {action}
      </div>
      {children}
    </section>
  )
}

export function Card({ children }: { children: ReactNode }) {
  return <div className={styles.card}>{children}</div>
}

/** Label and value pairs in a grid that wraps. */
export function Traits({ traits }: { traits: { label: string; value: ReactNode }[] }) {
  return (
    <dl className={styles.traits}>
      {traits.map((trait) => (
        <div key={trait.label}>
          <dt>{trait.label}</dt>
          <dd>{trait.value}</dd>
        </div>
      ))}
    </dl>
  )
}
