'use client'

import { sayMayCome, sayNight, sayPercent } from '@fryward/words'
import { useVoice } from '@/base/room/room-context.tsx'

import { Moon } from '@/base/ui/Moon.tsx'
import { Notice, WorrySign } from '@/base/ui/Notice.tsx'
import { Settle } from '@/parts/hand-over/Settle.tsx'
import { SubjectLink } from '@/parts/hand-over/SubjectLink.tsx'
import { WorryText } from '@/parts/hand-over/WorryText.tsx'
import styles from './hand-over.module.css'
import { LossText } from './Losses.tsx'
import { NightList } from './NightList.tsx'
import type { TheOne } from './say-once.ts'
import { TroubleText } from './TroubleText.tsx'
import { UndoneText } from './UndoneText.tsx'

type Props = { now: Date; today: string }

/** The one thing to watch, large: whoever reads nothing else has read this. */
export function WatchCard({ watch, ...when }: Props & { watch: TheOne | undefined }) {
  if (!watch)
    return (
      <Notice title="Nothing stands out">
        No worry is open, nothing was left undone, nothing was found dead, and neither hatch nor release is near.
      </Notice>
    )
  return (
    <section className={styles.watch} aria-labelledby="watch-title">
      <h2 id="watch-title" className={styles.watchTitle}>
        The one thing to watch
      </h2>
      <div className={styles.watchBody}>
        {watch.kind === 'hatch' ? <Moon probability={watch.of.probability} size={52} /> : <WorrySign />}
        <Watched watch={watch} {...when} />
      </div>
      {watch.kind === 'worry' && <Settle worry={watch.of} />}
    </section>
  )
}

function Watched({ watch, now, today }: Props & { watch: TheOne }) {
  const voice = useVoice()
  if (watch.kind === 'sign') return <TroubleText trouble={watch.of} now={now} />
  if (watch.kind === 'worry') return <WorryText worry={watch.of} now={now} />
  if (watch.kind === 'undone') return <UndoneText task={watch.of} now={now} isAlone />
  if (watch.kind === 'loss') return <LossText loss={watch.of} now={now} />
  return (
    <div>
      <p>
        <strong className={styles.large}>{sayPercent(watch.of.probability, voice)}</strong>{' '}
        <SubjectLink subject={watch.of.subject} /> {sayMayCome(watch.of.care)} {sayNight(watch.of.date, today, voice)}
      </p>
      {watch.others.length > 0 && (
        <div className={styles.others}>
          <span>or</span>
          <NightList nights={watch.others} care={watch.of.care} today={today} />
        </div>
      )}
    </div>
  )
}
