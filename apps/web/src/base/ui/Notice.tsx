import type { ReactNode } from 'react'
import styles from './notice.module.css'

/** A boxed message. Worry has its own sign and a double edge, so that colour is never the only difference. */
export function Notice({
  tone = 'plain',
  title,
  children,
}: {
  tone?: 'plain' | 'worry'
  title?: string
  children?: ReactNode
}) {
  return (
    <div className={styles.notice} data-tone={tone} role={tone === 'worry' ? 'alert' : undefined}>
      {title && (
        <p className={styles.title}>
          {tone === 'worry' && <WorrySign />}
          {title}
        </p>
      )}
      {children}
    </div>
  )
}

/** A triangle: the shape of "worry", as the filled round button is the shape of "do this". */
export function WorrySign() {
  return (
    <svg className={styles.sign} viewBox="0 0 20 20" aria-hidden="true">
      <path d="M10 2 19 18 1 18Z" fill="none" stroke="currentColor" strokeWidth="2" strokeLinejoin="round" />
      <path d="M10 8v4.5M10 15v.6" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
    </svg>
  )
}
