import type { Day, Task } from '@fryward/shared'
import { sayTime } from '@/dates/say.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { WorrySign } from '@/ui/Notice.tsx'
import { stationLabels } from '@/words/labels.ts'
import { bySubject, groupByStation, type StationGroup } from './arrange.ts'
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
        <LateStation key={group.station} group={group} day={day} now={now} />
      ))}
    </section>
  )
}

/** When everything at a stop was due at once, that is said once; else on each line. */
function LateStation({ group, day, now }: { group: StationGroup; day: Day; now: Date }) {
  const { timeZone } = useRoom()
  const sayDue = (task: Task) => {
    const round = day.rounds.find((one) => one.id === task.roundId)?.name.toLowerCase()
    return `due ${sayTime(task.dueAt, timeZone)}${round ? `, ${round}` : ''}`
  }
  const dues = new Set(group.tasks.map(sayDue))
  const [shared] = dues
  return (
    <div className={styles.lateStation}>
      <p className={styles.lateStationName}>
        <strong>{stationLabels[group.station]}</strong>
        {dues.size === 1 && `, ${shared}`}
      </p>
      {bySubject(group.tasks).map((one) => (
        <SubjectTasks key={one.subject.id} group={one} now={now} sayDue={dues.size === 1 ? undefined : sayDue} />
      ))}
    </div>
  )
}
