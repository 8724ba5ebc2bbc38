'use client'

import type { FactOf, Id, Photo } from '@fryward/shared'
import { sayFeedings, sayTime } from '@fryward/words'
import { useId, useState } from 'react'
import { useVoice } from '@/base/room/room-context.tsx'
import { FactLine } from './FactLine.tsx'
import { LineButton } from './LineButton.tsx'
import { isSaidAbove } from './said-above.ts'
import styles from './timeline.module.css'

type Props = { facts: FactOf<'feeding'>[]; photosOf: (factId: Id) => Photo[]; targetId: string }

/** A day's feedings as one line that opens; it stands open when the address points at one of them. */
export function FeedingsLine({ facts, photosOf, targetId }: Props) {
  const voice = useVoice()
  const id = useId()
  const isAimedAt = facts.some((fact) => `fact-${fact.id}` === targetId)
  const [chosen, choose] = useState<boolean>()
  const isOpen = chosen ?? isAimedAt
  const photos = facts.reduce((sum, fact) => sum + photosOf(fact.id).length, 0)
  const sentence = sayFeedings(
    facts.map((fact) => fact.data),
    voice,
  )
  const [latest, earliest] = [facts.at(0)?.at ?? '', facts.at(-1)?.at ?? '']
  return (
    <li className={styles.line}>
      <span className={styles.time}>
        {sayTime(earliest, voice) !== sayTime(latest, voice) && (
          <>
            <time dateTime={earliest}>{sayTime(earliest, voice)}</time>
            <span aria-hidden="true">–</span>
            <span className={styles.unseen}> to </span>
          </>
        )}
        <time dateTime={latest}>{sayTime(latest, voice)}</time>
      </span>
      <p className={styles.what}>
        <strong>Fed</strong> {sentence}
        {photos > 0 && <span className={styles.who}> {photos === 1 ? '1 photo' : `${photos} photos`}</span>}
      </p>
      <LineButton
        sign="unfold"
        label={`Each of them: Fed ${sentence}`}
        isOpen={isOpen}
        controls={id}
        onPress={() => choose(!isOpen)}
      />
      {isOpen && (
        <ol id={id} className={styles.folded}>
          {facts.map((fact, i) => (
            <FactLine
              key={fact.id}
              fact={fact}
              photos={photosOf(fact.id)}
              isTarget={targetId === `fact-${fact.id}`}
              isSaidAbove={isSaidAbove(fact, facts[i - 1], voice)}
            />
          ))}
        </ol>
      )}
    </li>
  )
}
