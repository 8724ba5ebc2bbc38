'use client'

import { useEffect, useState } from 'react'
import { stationLabels } from '@/words/labels.ts'
import { bySubject, type StationGroup, undoableUntil } from './arrange.ts'
import { SubjectTasks } from './SubjectTasks.tsx'
import styles from './today.module.css'

/**
 * One stop of the walk: its vessels, and under each what it needs. A stop with nothing open starts folded; one that is
 * finished while somebody stands at it stays, so that nothing moves under the thumb.
 */
export function StationCard({ group, now }: { group: StationGroup; now: Date }) {
  const open = group.tasks.filter((task) => task.state === 'open').length
  const isFresh = group.tasks.some((task) => undoableUntil(task, now) !== null)
  const [isShown, show] = useState(open > 0 || isFresh)
  // What was just done, perhaps from the late list above, is seen here with its undo.
  useEffect(() => {
    if (isFresh) show(true)
  }, [isFresh])
  return (
    <section className={styles.station} aria-labelledby={`station-${group.station}`}>
      <header className={styles.stationHead}>
        <h2 id={`station-${group.station}`}>{stationLabels[group.station]}</h2>
        <span className={styles.stationCount}>{open > 0 ? `${open} open` : 'all seen to'}</span>
        {open === 0 && (
          <button
            type="button"
            className={styles.stationFold}
            aria-expanded={isShown}
            aria-label={`${stationLabels[group.station]}: ${isShown ? 'fold' : `show ${group.tasks.length}`}`}
            onClick={() => show(!isShown)}
          >
            {isShown ? 'Fold' : 'Show'}
          </button>
        )}
      </header>
      {(isShown || open > 0) &&
        bySubject(group.tasks).map((one) => <SubjectTasks key={one.subject.id} group={one} now={now} />)}
    </section>
  )
}
