'use client'

import type { HandOver } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useVoice } from '@/base/room/room-context.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { meOptions } from '@/parts/session/me.ts'
import styles from './hand-over.module.css'

type Line = HandOver['since'][number]

const deeds: { of: Exclude<keyof Line, 'byName'>; one: string; many: string }[] = [
  { of: 'signedOff', one: 'task done', many: 'tasks done' },
  { of: 'skipped', one: 'skipped', many: 'skipped' },
  { of: 'recorded', one: 'recorded besides', many: 'recorded besides' },
  { of: 'changed', one: 'other change', many: 'other changes' },
]

const sayLine = (line: Line) =>
  deeds
    .filter(({ of }) => line[of] > 0)
    .map(({ of, one, many }) => `${line[of]} ${line[of] === 1 ? one : many}`)
    .join(', ')

/** What others wrote since this person last looked, person by person. */
export function Since({ handOver, now }: { handOver: HandOver; now: Date }) {
  const voice = useVoice()
  const me = useQuery(meOptions()).data?.user.name
  const { lastLookedAt, since } = handOver
  const title = lastLookedAt
    ? `Since you last looked, ${sayMoment(lastLookedAt, now, voice)}`
    : 'You have not looked here before: the last two weeks'
  return (
    <Section title={title}>
      {since.length === 0 ? (
        <p className={styles.soft}>Nothing new was written.</p>
      ) : (
        <ul className={styles.list}>
          {since.map((line) => (
            <li key={line.byName}>
              <span>
                <strong>{line.byName === me ? 'You' : line.byName}</strong> {sayLine(line)}
              </span>
            </li>
          ))}
        </ul>
      )}
    </Section>
  )
}
