'use client'

import type { Fact, Photo } from '@fryward/shared'
import { sayFact, sayFactKind, sayTime } from '@fryward/words'
import { useId, useState } from 'react'
import { useMay, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { AddPhoto } from '@/parts/photos/AddPhoto.tsx'
import { Thumbnails } from '@/parts/photos/PhotoStrip.tsx'
import { useFindThing } from '@/parts/things/use-things.ts'
import { LineButton } from './LineButton.tsx'
import { PutBack } from './PutBack.tsx'
import { StrikeForm } from './StrikeForm.tsx'
import styles from './timeline.module.css'

export type FactProps = {
  fact: Fact
  photos: Photo[]
  /** The address points at this one. */
  isTarget: boolean
  /** The line above is of the same moment and person, and says so. */
  isSaidAbove: boolean
}

/** One record: when, what, by whom; what can be done with it comes out on its button. */
export function FactLine({ fact, photos, isTarget, isSaidAbove }: FactProps) {
  const voice = useVoice()
  const may = useMay('record')
  const find = useFindThing()
  const [isOpen, setOpen] = useState(false)
  const id = useId()
  const care = find(fact.subjectId)?.care
  const kind = sayFactKind(fact.kind, care)
  const { main, detail } = sayFact(fact, { voice, care, nameOf: (thingId) => find(thingId)?.name })
  const isStruck = fact.struckAt !== null
  const what = `${kind} ${main}`
  return (
    <li
      id={`fact-${fact.id}`}
      className={styles.line}
      data-struck={isStruck || undefined}
      data-target={isTarget || undefined}
    >
      <time className={isSaidAbove ? styles.unseen : styles.time} dateTime={fact.at}>
        {sayTime(fact.at, voice)}
      </time>
      <div className={styles.what}>
        <p>
          <strong>{kind}</strong> {isStruck ? <s>{main}</s> : main}
        </p>
        <p className={isSaidAbove && !detail ? styles.unseen : styles.who}>
          {detail}
          <span className={isSaidAbove ? styles.unseen : undefined}>
            {detail && ', '}
            {fact.recordedByName}
          </span>
        </p>
        {isStruck && (
          <p className={styles.who}>
            struck out by {fact.struckByName}: {fact.struckReason}
          </p>
        )}
        {isStruck && may && <PutBack fact={fact} what={what} />}
        {photos.length > 0 && <Thumbnails photos={photos} isSmall />}
      </div>
      {may && !isStruck && (
        <LineButton
          sign="more"
          label={`More: ${what}`}
          isOpen={isOpen}
          controls={id}
          onPress={() => setOpen(!isOpen)}
        />
      )}
      {isOpen && !isStruck && <Deeds id={id} fact={fact} what={what} about={main} onDone={() => setOpen(false)} />}
    </li>
  )
}

type DeedsProps = { id: string; fact: Fact; what: string; about: string; onDone: () => void }

/** A photo of it, or away with it; one form open at a time. */
function Deeds({ id, fact, what, about, onDone }: DeedsProps) {
  const [open, setOpen] = useState<'strike' | 'photo' | null>(null)
  return (
    <div id={id} className={styles.deeds}>
      <div className={styles.buttons}>
        <Button
          variant="default"
          aria-expanded={open === 'photo'}
          onClick={() => setOpen(open === 'photo' ? null : 'photo')}
          aria-label={`Photo of: ${what}`}
        >
          Photo
        </Button>
        <Button
          variant="default"
          aria-expanded={open === 'strike'}
          onClick={() => setOpen(open === 'strike' ? null : 'strike')}
          aria-label={`Strike out: ${what}`}
        >
          Strike out
        </Button>
      </div>
      {open === 'photo' && <AddPhoto subjectId={fact.subjectId} factId={fact.id} about={about} />}
      {open === 'strike' && <StrikeForm factId={fact.id} onClose={onDone} />}
    </div>
  )
}
