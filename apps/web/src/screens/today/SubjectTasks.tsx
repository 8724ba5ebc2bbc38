import lineStyles from '@/parts/tasks/line.module.css'
import { SubjectName } from '@/parts/tasks/SubjectName.tsx'
import { TaskLine } from '@/parts/tasks/TaskLine.tsx'
import type { SubjectGroup } from './arrange.ts'
import styles from './today.module.css'

/** A vessel's drawing and name once, its lines short underneath; a lone line shares its button's height with them. */
export function SubjectTasks({ id, group, now }: { id?: string; group: SubjectGroup; now: Date }) {
  const { subject, tasks } = group
  const isAlone = tasks.length === 1
  const name = subject.kind !== 'room' && <SubjectName subject={subject} />
  return (
    <div id={id} className={styles.subject}>
      {!isAlone && name && <div className={lineStyles.subjectHead}>{name}</div>}
      <ul className={lineStyles.lines}>
        {tasks.map((task) => (
          <TaskLine key={task.id} task={task} now={now} name={isAlone && name} />
        ))}
      </ul>
    </div>
  )
}
