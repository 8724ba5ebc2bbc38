import type { Day } from '@fryward/shared'
import { progressOf, whoDidWhat } from './arrange.ts'
import styles from './today.module.css'

/** How far the day is, and by whose hands. */
export function Progress({ day }: { day: Day }) {
  const { done, all } = progressOf(day.tasks)
  const who = whoDidWhat(day.tasks)
  return (
    <div className={styles.progress}>
      <progress className={styles.bar} value={done} max={Math.max(1, all)} aria-label="Done today" />
      <p>
        <strong>
          {done} of {all}
        </strong>{' '}
        seen to
        {who.length > 0 && (
          <span className={styles.who}>: {who.map((one) => `${one.name} ${one.done}`).join(', ')}</span>
        )}
      </p>
    </div>
  )
}
