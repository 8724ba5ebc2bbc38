'use client'

import type { HandOverNote } from '@fryward/shared'
import { sayMoment } from '@/base/dates/say.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import styles from './hand-over.module.css'
import { SubjectLink } from './SubjectLink.tsx'

export function WorryText({ worry, now }: { worry: HandOverNote; now: Date }) {
  const { timeZone } = useRoom()
  // "R4 smells a little", about R4, names it already.
  const isNamed = worry.subject !== null && worry.text.startsWith(`${worry.subject.name} `)
  return (
    <span className={styles.grow}>
      {worry.subject && (
        <>
          <SubjectLink subject={worry.subject} />
          {isNamed ? '' : ': '}
        </>
      )}
      {isNamed ? worry.text.slice(worry.subject?.name.length) : worry.text}
      <span className={styles.by}>
        {sayMoment(worry.at, now, timeZone)}, {worry.byName}
      </span>
    </span>
  )
}
