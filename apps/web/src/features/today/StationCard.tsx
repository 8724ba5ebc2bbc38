'use client'

import type { Task } from '@fryward/shared'
import Link from 'next/link'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { hrefOf } from '@/features/vessels/href.ts'
import { VesselGlyph } from '@/features/vessels/VesselGlyph.tsx'
import { stationLabels } from '@/words/labels.ts'
import type { StationGroup } from './arrange.ts'
import { TaskLine } from './TaskLine.tsx'
import styles from './today.module.css'

type SubjectGroup = { subject: Task['subject']; tasks: Task[] }

function bySubject(tasks: Task[]): SubjectGroup[] {
  const groups = new Map<string, SubjectGroup>()
  for (const task of tasks) {
    const group = groups.get(task.subject.id) ?? { subject: task.subject, tasks: [] }
    group.tasks.push(task)
    groups.set(task.subject.id, group)
  }
  return [...groups.values()]
}

/** One stop of the walk: its vessels, and under each what it needs. */
export function StationCard({ group, now }: { group: StationGroup; now: Date }) {
  const open = group.tasks.filter((task) => task.state === 'open').length
  return (
    <section className={styles.station} aria-labelledby={`station-${group.station}`}>
      <header className={styles.stationHead}>
        <h2 id={`station-${group.station}`}>{stationLabels[group.station]}</h2>
        <span className={styles.stationCount}>{open > 0 ? `${open} open` : 'all seen to'}</span>
      </header>
      {bySubject(group.tasks).map((one) => (
        <SubjectTasks key={one.subject.id} group={one} now={now} />
      ))}
    </section>
  )
}

function SubjectTasks({ group, now }: { group: SubjectGroup; now: Date }) {
  const room = useRoom()
  const { subject } = group
  const href = hrefOf(room.id, subject)
  return (
    <div className={styles.subject}>
      {subject.kind !== 'room' && (
        <h3 className={styles.subjectName}>
          <VesselGlyph kind={subject.kind} id={subject.id} />
          {href ? (
            <Link href={href} prefetch={false}>
              {subject.name}
            </Link>
          ) : (
            subject.name
          )}
        </h3>
      )}
      <ul className={styles.lines}>
        {group.tasks.map((task) => (
          <TaskLine key={task.id} task={task} now={now} />
        ))}
      </ul>
    </div>
  )
}
