'use client'

import type { HandOver } from '@fryward/shared'
import { sayMoment, sayNight, toPlainDate } from '@/dates/say.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { Moon } from '@/glyphs/Moon.tsx'
import { Notice, WorrySign } from '@/ui/Notice.tsx'
import styles from './hand-over.module.css'
import { SubjectLink } from './SubjectLink.tsx'
import { saySigns } from './say-signs.ts'
import { type Watch, whatToWatch } from './what-to-watch.ts'

/** The one thing to watch, large: whoever reads nothing else has read this. */
export function WatchCard({ handOver, now }: { handOver: HandOver; now: Date }) {
  const today = toPlainDate(now, useRoom().timeZone)
  const watch = whatToWatch(handOver, today)
  if (!watch) return <Notice title="Nothing stands out">No worry is open and no hatch is near.</Notice>
  return (
    <section className={styles.watch} aria-labelledby="watch-title">
      <h2 id="watch-title" className={styles.watchTitle}>
        The one thing to watch
      </h2>
      <div className={styles.watchBody}>
        {watch.kind === 'hatch' ? <Moon probability={watch.of.probability} size={52} /> : <WorrySign />}
        <WatchText watch={watch} now={now} today={today} />
      </div>
    </section>
  )
}

function WatchText({ watch, now, today }: { watch: Watch; now: Date; today: string }) {
  const { timeZone } = useRoom()
  if (watch.kind === 'hatch')
    return (
      <p>
        <strong className={styles.large}>{Math.round(watch.of.probability * 100)} %</strong>{' '}
        <SubjectLink subject={watch.of.subject} /> may hatch {sayNight(watch.of.date, today)}
      </p>
    )
  if (watch.kind === 'sign')
    return (
      <p>
        <SubjectLink subject={watch.of.subject} />: <strong>{saySigns(watch.of.signs)}</strong>
        {watch.of.note && `. ${watch.of.note}`}
        <span className={styles.by}>
          {sayMoment(watch.of.at, now, timeZone)}, {watch.of.byName}
        </span>
      </p>
    )
  return (
    <p>
      {watch.of.subject && (
        <>
          <SubjectLink subject={watch.of.subject} />:{' '}
        </>
      )}
      <strong>{watch.of.text}</strong>
      <span className={styles.by}>
        {sayMoment(watch.of.at, now, timeZone)}, {watch.of.byName}
      </span>
    </p>
  )
}
