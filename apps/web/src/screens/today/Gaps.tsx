'use client'

import type { Day } from '@fryward/shared'
import { sayDatesIn } from '@fryward/words'
import { useRoom } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { useSubjectHref } from '@/parts/things/use-subject-href.ts'
import styles from './today.module.css'

/** Rules that could not be worked out, each with what is missing: silence would look like "nothing to do". */
export function Gaps({ day }: { day: Day }) {
  if (day.gaps.length === 0) return null
  return (
    <Notice tone="worry" title="Could not be worked out">
      <ul className={styles.gaps}>
        {day.gaps.map((gap) => (
          <GapLine key={`${gap.ruleId} ${gap.subjectId}`} gap={gap} />
        ))}
      </ul>
    </Notice>
  )
}

/** What is missing, and the two places where it can be put right. */
function GapLine({ gap }: { gap: Day['gaps'][number] }) {
  const room = useRoom()
  const href = useSubjectHref()(gap.subjectId)
  return (
    <li>
      <strong>{gap.subjectName}:</strong> {sayDatesIn(gap.message, room)}
      <span className={styles.gapLinks}>
        {href && <Link href={href}>Go to {gap.subjectName}</Link>}
        <Link href={`/rooms/${room.id}/rules#${gap.ruleId}`}>See the rule</Link>
      </span>
    </li>
  )
}
