'use client'

import type { HandOverNote } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import { SubjectLink } from './SubjectLink.tsx'
import styles from './worries.module.css'

export function WorryText({ worry, now }: { worry: HandOverNote; now: Date }) {
  const voice = useVoice()
  return (
    <span className={styles.grow}>
      {worry.text}
      <span className={styles.by}>
        {worry.subject && (
          <>
            <SubjectLink subject={worry.subject} />,{' '}
          </>
        )}
        {sayMoment(worry.at, now, voice)}, {worry.byName}
      </span>
    </span>
  )
}
