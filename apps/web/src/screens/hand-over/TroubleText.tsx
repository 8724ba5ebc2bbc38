'use client'

import { sayMoment, sayTitle } from '@fryward/words'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { SubjectLink } from '@/parts/hand-over/SubjectLink.tsx'
import styles from './hand-over.module.css'
import type { Trouble } from './say-once.ts'

/** "R1: foam", who saw it and when, and the late task that follows from it. */
export function TroubleText({ trouble, now }: { trouble: Trouble; now: Date }) {
  const voice = useVoice()
  const room = useRoom()
  const notes = [...new Set(trouble.seen.flatMap(({ note }) => (note ? [note] : [])))]
  return (
    <span>
      <SubjectLink subject={trouble.subject} />: <strong>{trouble.text}</strong>
      {notes.length > 0 && `. ${notes.join(' ')}`}
      <span className={styles.by}>
        {trouble.seen.map((one) => `${sayMoment(one.at, now, voice)}, ${one.byName}`).join('; ')}
      </span>
      {trouble.task && (
        <span className={styles.then}>
          <Link href={`/rooms/${room.id}/today?task=${trouble.task.taskId}`}>
            {sayTitle(trouble.task.title, voice)}
          </Link>{' '}
          is late, due {sayMoment(trouble.task.dueAt, now, voice)}
        </span>
      )}
    </span>
  )
}
