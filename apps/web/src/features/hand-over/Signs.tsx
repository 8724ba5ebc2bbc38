'use client'

import type { HandOver } from '@fryward/shared'
import { sayMoment } from '@/dates/say.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { Section } from '@/ui/Page.tsx'
import styles from './hand-over.module.css'
import { SubjectLink } from './SubjectLink.tsx'
import { saySigns } from './say-signs.ts'

/** Signs of trouble that somebody saw in the last two days. */
export function Signs({ handOver, now }: { handOver: HandOver; now: Date }) {
  const { timeZone } = useRoom()
  if (handOver.signs.length === 0) return null
  return (
    <Section title="Signs of trouble">
      <ul className={styles.list}>
        {handOver.signs.map((one) => (
          <li key={one.factId}>
            <span>
              <SubjectLink subject={one.subject} />: {saySigns(one.signs)}
              {one.note && `. ${one.note}`}
              <span className={styles.by}>
                {sayMoment(one.at, now, timeZone)}, {one.byName}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </Section>
  )
}
