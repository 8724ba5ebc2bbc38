'use client'

import { sayMoment, sayWholeTitle } from '@fryward/words'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import styles from './hand-over.module.css'
import type { Undone } from './what-to-watch.ts'

/** A task that was not done, when it was due, and what was said about it. */
export function UndoneText({ task, now, isAlone = false }: { task: Undone; now: Date; isAlone?: boolean }) {
  const voice = useVoice()
  const room = useRoom()
  return (
    <span>
      <Link href={`/rooms/${room.id}/today?task=${task.taskId}`}>{sayWholeTitle(task.title, task.subject, voice)}</Link>
      <span className={styles.by}>
        {isAlone && (task.isLate ? 'late, ' : task.state === 'skipped' ? 'skipped, ' : 'not done, ')}
        due {sayMoment(task.dueAt, now, voice)}
        {task.byName && `, ${task.byName}`}
        {/* Under "Passed, not done" the reason would say that once more on every line. */}
        {task.state !== 'missed' && task.reason && `: ${task.reason}`}
      </span>
    </span>
  )
}
