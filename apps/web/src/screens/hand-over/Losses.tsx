'use client'

import { sayHeads, sayMoment } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { SubjectLink } from '@/parts/hand-over/SubjectLink.tsx'
import styles from './hand-over.module.css'
import type { Loss } from './what-to-watch.ts'

/** Animals that were found dead in the last two days. */
export function Losses({ losses, now }: { losses: Loss[]; now: Date }) {
  if (losses.length === 0) return null
  return (
    <Section title="Dead in the last two days">
      <ul className={styles.list}>
        {losses.map((loss) => (
          <li key={`${loss.subject.id} ${loss.of}`}>
            <LossText loss={loss} now={now} />
          </li>
        ))}
      </ul>
    </Section>
  )
}

/** "L1: 7 larvae dead", and when and by whom some were found last. */
export function LossText({ loss, now }: { loss: Loss; now: Date }) {
  const voice = useVoice()
  const { subject, number, of, care, at, byName } = loss
  return (
    <span>
      <SubjectLink subject={subject} />:{' '}
      <strong>{sayHeads(number, { of, care: care ?? undefined }, voice)} dead</strong>
      <span className={styles.by}>
        last found {sayMoment(at, now, voice)}, {byName}
      </span>
    </span>
  )
}
