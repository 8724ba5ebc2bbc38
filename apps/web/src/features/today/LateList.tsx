import type { Day, Task } from '@fryward/shared'
import { WorrySign } from '@/ui/Notice.tsx'
import { stationLabels } from '@/words/labels.ts'
import { bySubject, groupByStation } from './arrange.ts'
import { SubjectTasks } from './SubjectTasks.tsx'
import styles from './today.module.css'

/** What should have been done by now, of any round: the same walk, cleanest water first. */
export function LateList({ tasks, day, now }: { tasks: Task[]; day: Day; now: Date }) {
  return (
    <section className={styles.late} aria-labelledby="late-title">
      <h2 id="late-title" className={styles.lateTitle}>
        <WorrySign /> Late, not done yet
        <span className={styles.lateCount}>{tasks.length}</span>
      </h2>
      {groupByStation(tasks).map((group) => (
        <div key={group.station} className={styles.lateStation}>
          <p className={styles.lateStationName}>{stationLabels[group.station]}</p>
          {bySubject(group.tasks).map((one) => (
            <SubjectTasks key={one.subject.id} group={one} now={now} rounds={day.rounds} />
          ))}
        </div>
      ))}
    </section>
  )
}
