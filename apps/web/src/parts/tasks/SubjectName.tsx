'use client'

import type { Task } from '@fryward/shared'
import { useRoom } from '@/base/room/room-context.tsx'
import { Link } from '@/base/ui/Link.tsx'
import { hrefOf } from '@/parts/things/href.ts'
import { VesselGlyph } from '@/parts/things/VesselGlyph.tsx'
import styles from './line.module.css'

type Props = {
  subject: Task['subject']
  /** In small print behind the name. */
  note?: string | undefined
}

/** A vessel's drawing and name, the way to its page. What belongs to the room as a whole needs no name in it. */
export function SubjectName({ subject, note }: Props) {
  const href = hrefOf(useRoom().id, subject)
  const small = note && <small className={styles.due}>{note}</small>
  if (subject.kind === 'room') return small
  return (
    <>
      <span className={styles.glyph}>
        <VesselGlyph kind={subject.kind} id={subject.id} size={28} />
      </span>
      <h3 className={styles.subjectName}>
        {href ? <Link href={href}>{subject.name}</Link> : subject.name} {small}
      </h3>
    </>
  )
}
