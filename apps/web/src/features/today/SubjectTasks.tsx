'use client'

import type { Day, Task } from '@fryward/shared'
import Link from 'next/link'
import type { ReactNode } from 'react'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { hrefOf } from '@/features/vessels/href.ts'
import { VesselGlyph } from '@/features/vessels/VesselGlyph.tsx'
import type { SubjectGroup } from './arrange.ts'
import { TaskLine } from './TaskLine.tsx'
import styles from './today.module.css'

type Props = { group: SubjectGroup; now: Date; rounds?: Day['rounds'] }

/** A vessel's drawing and name once, its lines short underneath; a vessel with one line keeps both on that line. */
export function SubjectTasks({ group, now, rounds }: Props) {
  const { subject, tasks } = group
  const roundOf = (task: Task) => rounds?.find((round) => round.id === task.roundId)?.name
  const isAlone = tasks.length === 1 && subject.kind !== 'room'
  return (
    <div className={styles.subject}>
      {subject.kind !== 'room' && !isAlone && (
        <h3 className={styles.subjectName}>
          <VesselGlyph kind={subject.kind} id={subject.id} size={34} />
          <SubjectLink subject={subject}>{subject.name}</SubjectLink>
        </h3>
      )}
      <ul className={styles.lines}>
        {tasks.map((task) => (
          <TaskLine
            key={task.id}
            task={task}
            now={now}
            roundName={roundOf(task)}
            isUnderName={!isAlone}
            glyph={
              isAlone && (
                <SubjectLink subject={subject} className={styles.glyphLink}>
                  <VesselGlyph kind={subject.kind} id={subject.id} size={38} />
                  <span className={styles.said}>{subject.name}</span>
                </SubjectLink>
              )
            }
          />
        ))}
      </ul>
    </div>
  )
}

type LinkProps = { subject: Task['subject']; className?: string | undefined; children: ReactNode }

function SubjectLink({ subject, className, children }: LinkProps) {
  const href = hrefOf(useRoom().id, subject)
  if (!href) return <span className={className}>{children}</span>
  return (
    <Link href={href} prefetch={false} className={className}>
      {children}
    </Link>
  )
}
