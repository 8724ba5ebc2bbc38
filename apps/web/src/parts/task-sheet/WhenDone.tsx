'use client'

import { DateTimeBox } from '@/base/forms/DateTimeBox.tsx'
import styles from './sheet.module.css'

/** For what was done earlier and is only written down now. */
export function WhenDone({
  value,
  onChange,
}: {
  value: string | undefined
  onChange: (doneAt: string | undefined) => void
}) {
  return (
    <details className={styles.fold}>
      <summary>Done earlier than now</summary>
      <DateTimeBox label="When it was done" value={value} onChange={onChange} />
    </details>
  )
}
