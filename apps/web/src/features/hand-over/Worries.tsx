'use client'

import type { HandOver, HandOverNote } from '@fryward/shared'
import { sentenceOf } from '@/api/problem.ts'
import { sayMoment } from '@/dates/say.ts'
import { useMay, useRoom } from '@/features/rooms/room-context.tsx'
import { Button } from '@/ui/Button.tsx'
import { WorrySign } from '@/ui/Notice.tsx'
import { Section } from '@/ui/Page.tsx'
import { useToast } from '@/ui/toast.tsx'
import styles from './hand-over.module.css'
import { useSettleWorry } from './queries.ts'
import { SubjectLink } from './SubjectLink.tsx'

/** Open worries, until somebody says that they are over. */
export function Worries({ handOver, now }: { handOver: HandOver; now: Date }) {
  if (handOver.worries.length === 0) return null
  return (
    <Section title="Open worries">
      <ul className={styles.list}>
        {handOver.worries.map((worry) => (
          <WorryLine key={worry.id} worry={worry} now={now} />
        ))}
      </ul>
    </Section>
  )
}

function WorryLine({ worry, now }: { worry: HandOverNote; now: Date }) {
  const room = useRoom()
  const may = useMay('record')
  const settle = useSettleWorry(room.id)
  const toast = useToast()
  const end = () => settle.mutate(worry.id, { onError: (error) => toast({ text: sentenceOf(error) }) })
  return (
    <li className={styles.worry}>
      <WorrySign />
      <span className={styles.grow}>
        {worry.subject && (
          <>
            <SubjectLink subject={worry.subject} />:{' '}
          </>
        )}
        {worry.text}
        <span className={styles.by}>
          {sayMoment(worry.at, now, room.timeZone)}, {worry.byName}
        </span>
      </span>
      {may && (
        <Button variant="default" isBusy={settle.isPending} onClick={end} aria-label={`It is over: ${worry.text}`}>
          It is over
        </Button>
      )}
    </li>
  )
}
