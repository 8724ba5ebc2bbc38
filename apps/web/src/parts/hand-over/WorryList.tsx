'use client'

import type { HandOverNote } from '@fryward/shared'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { Settle } from './Settle.tsx'
import { WorryText } from './WorryText.tsx'
import styles from './worries.module.css'

/** Each worry with who wrote it, until somebody says that it is over. */
export function WorryList({ worries, now }: { worries: HandOverNote[]; now: Date }) {
  return (
    <ul className={styles.list} aria-label="Open worries">
      {worries.map((worry) => (
        <li key={worry.id}>
          <WorrySign />
          <WorryText worry={worry} now={now} />
          <Settle worry={worry} />
        </li>
      ))}
    </ul>
  )
}
