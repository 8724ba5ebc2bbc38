'use client'

import type { Task } from '@fryward/shared'
import { sayWholeTitle } from '@fryward/words'
import { useMay, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useOpenTask } from '@/parts/tasks/open-task.ts'
import styles from './today.module.css'

/** Tasks no longer wanted, each with the reason: folded away, never silently gone, and what was done all the same counts. */
export function WithdrawnList({ tasks }: { tasks: Task[] }) {
  const voice = useVoice()
  const may = useMay('sign_off')
  const openTask = useOpenTask()
  return (
    <details className={styles.fold}>
      <summary>{tasks.length === 1 ? '1 no longer needed' : `${tasks.length} no longer needed`}</summary>
      <ul>
        {tasks.map((task) => {
          const whole = sayWholeTitle(task.title, task.subject, voice)
          return (
            <li key={task.id}>
              <span>
                {whole} {task.reason && <em>({task.reason})</em>}
              </span>
              <Button
                variant="subtle"
                aria-haspopup="dialog"
                aria-label={may ? `I did it anyway: ${whole}` : `See: ${whole}`}
                onClick={() => openTask(task.id)}
              >
                {may ? 'I did it anyway' : 'See'}
              </Button>
            </li>
          )
        })}
      </ul>
    </details>
  )
}
