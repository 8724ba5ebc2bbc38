'use client'

import type { Day } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { meOptions } from '@/parts/session/me.ts'
import { progressOf } from './arrange.ts'
import { sayWho } from './say-progress.ts'
import styles from './today.module.css'

/** How far the day is, and by whose hands. */
export function Progress({ day }: { day: Day }) {
  const me = useQuery(meOptions()).data?.user.name
  const { done, all } = progressOf(day.tasks)
  return (
    <div className={styles.progress}>
      <progress className={styles.bar} value={done} max={Math.max(1, all)} aria-label="Done today" />
      <p>
        <strong>
          {done} of {all}
        </strong>{' '}
        <span className={styles.who}>{sayWho(day.tasks, me)}</span>
      </p>
    </div>
  )
}
