'use client'

import type { Station } from '@fryward/shared'
import { stationLabels } from '@fryward/words'
import { useState } from 'react'
import { AllAsPlanned } from './AllAsPlanned.tsx'
import { bySubject, isQuiet, type Quiet, type StationGroup } from './arrange.ts'
import { SeenTo } from './SeenTo.tsx'
import { SubjectTasks } from './SubjectTasks.tsx'
import styles from './today.module.css'
import { useFolded } from './use-folded.ts'

export const stationTitleId = (station: Station) => `station-${station}`
const subjectId = (id: string) => `seen-to-${id}`

/** One stop of the walk: its vessels, and under each what it needs; those that needed nobody when it was opened in one line. */
export function StationCard({ group, now, isLate }: { group: StationGroup } & Quiet) {
  const open = group.tasks.filter((task) => task.state === 'open').length
  const titleId = stationTitleId(group.station)
  const vessels = bySubject(group.tasks)
  const quiet = vessels.filter((one) => isQuiet(one, { now, isLate })).map(({ subject }) => subject.id)
  // A stop that is shown although all of it is seen to is shown whole.
  const [isWhole] = useState(quiet.length === vessels.length)
  const folded = useFolded(isWhole ? [] : quiet)
  const [isUnfolded, unfold] = useState(false)
  const names = vessels.filter(({ subject }) => folded.includes(subject.id)).map(({ subject }) => subject.name)
  return (
    <section className={styles.station} aria-labelledby={titleId}>
      <header className={styles.stationHead}>
        <h2 id={titleId} tabIndex={-1}>
          {stationLabels[group.station]}
        </h2>
        <span className={styles.stationCount}>{open > 0 ? `${open} open` : 'all seen to'}</span>
      </header>
      {vessels
        .filter(({ subject }) => isUnfolded || !folded.includes(subject.id))
        .map((one) => (
          <SubjectTasks key={one.subject.id} id={subjectId(one.subject.id)} group={one} now={now} />
        ))}
      <SeenTo
        names={names}
        lead="Seen to"
        at={stationLabels[group.station].toLowerCase()}
        firstId={folded[0] && subjectId(folded[0])}
        isUnfolded={isUnfolded}
        onUnfold={unfold}
      />
      <AllAsPlanned group={group} titleId={titleId} />
    </section>
  )
}
