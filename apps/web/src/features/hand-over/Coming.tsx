'use client'

import type { HandOver } from '@fryward/shared'
import { sayNight, toPlainDate } from '@/dates/say.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { Moon } from '@/glyphs/Moon.tsx'
import { Section } from '@/ui/Page.tsx'
import styles from './hand-over.module.css'
import { SubjectLink } from './SubjectLink.tsx'

type Night = HandOver['coming'][number]

/** Nights of hatching ahead, clutch by clutch, as moons with their number. */
export function Coming({ handOver, now }: { handOver: HandOver; now: Date }) {
  const today = toPlainDate(now, useRoom().timeZone)
  if (handOver.coming.length === 0) return null
  const byClutch = new Map<string, Night[]>()
  for (const night of handOver.coming)
    byClutch.set(night.subject.id, [...(byClutch.get(night.subject.id) ?? []), night])
  return (
    <Section title="What is coming">
      <ul className={styles.list}>
        {[...byClutch.values()].map((nights) => (
          <li key={nights[0]?.subject.id}>
            {nights[0] && <SubjectLink subject={nights[0].subject} />}
            <ul className={styles.nights} aria-label="Nights it may hatch">
              {nights.map((night) => (
                <li key={night.date} className={styles.night}>
                  <Moon probability={night.probability} />
                  <strong>{Math.round(night.probability * 100)} %</strong>
                  <span>{sayNight(night.date, today)}</span>
                </li>
              ))}
            </ul>
          </li>
        ))}
      </ul>
    </Section>
  )
}
