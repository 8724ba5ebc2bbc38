import type { Task } from '@fryward/shared'
import { useId } from 'react'
import lineStyles from '@/parts/tasks/line.module.css'
import { SubjectName } from '@/parts/tasks/SubjectName.tsx'
import { TaskLine } from '@/parts/tasks/TaskLine.tsx'
import styles from './today.module.css'

/** What is asked before the first stop of a round: the rest of the list follows from its answer. */
export function FirstOfAll({ tasks, now }: { tasks: Task[]; now: Date }) {
  const titleId = useId()
  return (
    <section className={styles.station} aria-labelledby={titleId}>
      <header className={styles.stationHead}>
        <h2 id={titleId}>First of all</h2>
      </header>
      <ul className={lineStyles.lines}>
        {tasks.map((task) => (
          <TaskLine key={task.id} task={task} now={now} name={<SubjectName subject={task.subject} />} />
        ))}
      </ul>
    </section>
  )
}
