'use client'

import type { Task } from '@fryward/shared'
import { useUnitSystem } from '@/features/rooms/room-context.tsx'
import { toText } from '@/quantities/Amount.tsx'
import styles from './today.module.css'

/** Tasks no longer wanted, each with the reason: folded away, never silently gone. */
export function WithdrawnList({ tasks }: { tasks: Task[] }) {
  const system = useUnitSystem()
  if (tasks.length === 0) return null
  return (
    <details className={styles.fold}>
      <summary>{tasks.length === 1 ? '1 no longer needed' : `${tasks.length} no longer needed`}</summary>
      <ul>
        {tasks.map((task) => (
          <li key={task.id}>
            {task.subject.name}: {toText(task.title, system)} {task.reason && <em>({task.reason})</em>}
          </li>
        ))}
      </ul>
    </details>
  )
}
