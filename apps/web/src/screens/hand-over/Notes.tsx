'use client'

import type { HandOverNote } from '@fryward/shared'
import { sayDay, sayMoment, sayTime, toPlainDate } from '@fryward/words'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { WorrySign } from '@/base/ui/Notice.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { SubjectLink } from '@/parts/hand-over/SubjectLink.tsx'
import styles from './hand-over.module.css'

/** Notes as a running page, newest first, under the day they were written on. */
export function Notes({ notes, now }: { notes: HandOverNote[]; now: Date }) {
  const voice = useVoice()
  const { timeZone } = useRoom()
  const today = toPlainDate(now, timeZone)
  const days = new Map<string, HandOverNote[]>()
  for (const note of notes) {
    const date = toPlainDate(note.at, timeZone)
    days.set(date, [...(days.get(date) ?? []), note])
  }
  return (
    <Section title="Notes">
      {days.size === 0 && (
        <p className={styles.soft}>No note yet. What the next person should know goes here, in a sentence.</p>
      )}
      {[...days].map(([date, ofDay]) => (
        <div key={date}>
          <h3 className={styles.kind}>{capital(sayDay(date, today, voice))}</h3>
          <ul className={styles.list}>
            {ofDay.map((note) => (
              <NoteLine key={note.id} note={note} now={now} />
            ))}
          </ul>
        </div>
      ))}
    </Section>
  )
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

function NoteLine({ note, now }: { note: HandOverNote; now: Date }) {
  const voice = useVoice()
  return (
    <li className={styles.note}>
      <span className={styles.by}>
        {sayTime(note.at, voice)} {note.byName}
      </span>
      <span className={styles.text}>
        {note.isWorry && (
          <>
            <WorrySign />
            <span className={styles.said}>A worry: </span>
          </>
        )}
        {note.subject && (
          <>
            <SubjectLink subject={note.subject} />:{' '}
          </>
        )}
        {note.text}
      </span>
      {note.settledAt && (
        <span className={styles.by}>
          over {sayMoment(note.settledAt, now, voice)}, {note.settledByName}
        </span>
      )}
    </li>
  )
}
