import type { Day, Task } from '@fryward/shared'
import { WorrySign } from '@/ui/Notice.tsx'
import { TaskLine } from './TaskLine.tsx'
import styles from './today.module.css'

/** What should have been done by now, of any round, oldest first. */
export function LateList({ tasks, day, now }: { tasks: Task[]; day: Day; now: Date }) {
  const nameOf = (roundId: string) => day.rounds.find((round) => round.id === roundId)?.name
  return (
    <section className={styles.late} aria-labelledby="late-title">
      <h2 id="late-title" className={styles.lateTitle}>
        <WorrySign /> Late, not done yet
      </h2>
      <ul className={styles.lines}>
        {tasks.map((task) => (
          <TaskLine key={task.id} task={task} now={now} roundName={nameOf(task.roundId)} withSubject />
        ))}
      </ul>
    </section>
  )
}
