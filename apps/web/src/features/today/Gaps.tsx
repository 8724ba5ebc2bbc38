import type { Day } from '@fryward/shared'
import { Notice } from '@/ui/Notice.tsx'
import styles from './today.module.css'

/** Rules that could not be worked out, each with what is missing: silence would look like "nothing to do". */
export function Gaps({ day }: { day: Day }) {
  if (day.gaps.length === 0) return null
  return (
    <Notice tone="worry" title="Could not be worked out">
      <ul className={styles.gaps}>
        {day.gaps.map((gap) => (
          <li key={`${gap.ruleId} ${gap.subjectId}`}>
            <strong>{gap.subjectName}:</strong> {gap.message}
          </li>
        ))}
      </ul>
    </Notice>
  )
}
