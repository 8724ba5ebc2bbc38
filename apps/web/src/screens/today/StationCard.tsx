import type { Station } from '@fryward/shared'
import { stationLabels } from '@fryward/words'
import { AllAsPlanned } from './AllAsPlanned.tsx'
import { bySubject, type StationGroup } from './arrange.ts'
import { SubjectTasks } from './SubjectTasks.tsx'
import styles from './today.module.css'

export const stationTitleId = (station: Station) => `station-${station}`

/** One stop of the walk: its vessels, and under each what it needs. */
export function StationCard({ group, now }: { group: StationGroup; now: Date }) {
  const open = group.tasks.filter((task) => task.state === 'open').length
  const titleId = stationTitleId(group.station)
  return (
    <section className={styles.station} aria-labelledby={titleId}>
      <header className={styles.stationHead}>
        <h2 id={titleId} tabIndex={-1}>
          {stationLabels[group.station]}
        </h2>
        <span className={styles.stationCount}>{open > 0 ? `${open} open` : 'all seen to'}</span>
      </header>
      {bySubject(group.tasks).map((one) => (
        <SubjectTasks key={one.subject.id} group={one} now={now} />
      ))}
      <AllAsPlanned group={group} titleId={titleId} />
    </section>
  )
}
