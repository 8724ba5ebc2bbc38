'use client'

import type { Task } from '@fryward/shared'
import Link from 'next/link'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { hrefOf } from '@/features/vessels/href.ts'
import { VesselGlyph } from '@/features/vessels/VesselGlyph.tsx'
import type { SubjectGroup } from './arrange.ts'
import { TaskLine } from './TaskLine.tsx'
import styles from './today.module.css'

type Props = { group: SubjectGroup; now: Date; sayDue?: ((task: Task) => string) | undefined }

/** A vessel's drawing and name once, its lines short underneath; a lone line shares its button's height with them. */
export function SubjectTasks({ group, now, sayDue }: Props) {
  const { subject, tasks } = group
  const isAlone = tasks.length === 1
  const name = subject.kind !== 'room' && <SubjectName subject={subject} />
  return (
    <div className={styles.subject}>
      {!isAlone && name}
      <ul className={styles.lines}>
        {tasks.map((task) => (
          <TaskLine key={task.id} task={task} now={now} due={sayDue?.(task)} name={isAlone && name} />
        ))}
      </ul>
    </div>
  )
}

function SubjectName({ subject }: { subject: Task['subject'] }) {
  const href = hrefOf(useRoom().id, subject)
  return (
    <h3 className={styles.subjectName}>
      <VesselGlyph kind={subject.kind} id={subject.id} size={32} />
      {href ? (
        <Link href={href} prefetch={false}>
          {subject.name}
        </Link>
      ) : (
        subject.name
      )}
    </h3>
  )
}
