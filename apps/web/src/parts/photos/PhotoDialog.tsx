'use client'

import type { Photo } from '@fryward/shared'
import { sayMoment } from '@fryward/words'
import { useEffect, useRef, useState } from 'react'
import { serverNow } from '@/base/api/server-clock.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import styles from './photos.module.css'
import { photoUrl, useStrikePhoto } from './queries.ts'
import { WhatItShows } from './WhatItShows.tsx'

/** One photo in full size, with its word, who added it, and the way to take it off. */
export function PhotoDialog({ photo, onClose }: { photo: Photo; onClose: () => void }) {
  const voice = useVoice()
  const room = useRoom()
  const dialog = useRef<HTMLDialogElement>(null)
  useEffect(() => dialog.current?.showModal(), [])
  return (
    <dialog ref={dialog} className={styles.dialog} onClose={onClose} aria-label={photo.caption || 'Photo'}>
      {/* biome-ignore lint/performance/noImgElement: the API serves its own sizes, for the room's people only */}
      <img
        className={styles.full}
        src={photoUrl(room.id, photo.id, 'full')}
        width={photo.width}
        height={photo.height}
        alt={photo.caption || `Photo by ${photo.addedByName}`}
      />
      {photo.caption && <p className={styles.word}>{photo.caption}</p>}
      <p className={styles.soft}>
        {sayMoment(photo.addedAt, serverNow(), voice)}, {photo.addedByName}
      </p>
      <WhatItShows photo={photo} />
      <div className={styles.choose}>
        <Button variant="filled" onClick={() => dialog.current?.close()}>
          Close
        </Button>
        <TakeOff photo={photo} onGone={() => dialog.current?.close()} />
      </div>
    </dialog>
  )
}

function TakeOff({ photo, onGone }: { photo: Photo; onGone: () => void }) {
  const may = useMay('record')
  const strike = useStrikePhoto(useRoom().id)
  const [isAsked, ask] = useState(false)
  if (!may) return null
  if (!isAsked)
    return (
      <Button variant="subtle" onClick={() => ask(true)}>
        Take it off
      </Button>
    )
  return (
    <fieldset className={styles.ask}>
      <legend>Take this photo off the record?</legend>
      <FormProblem error={strike.error} />
      <div className={styles.choose}>
        <Button isBusy={strike.isPending} onClick={() => strike.mutate(photo.id, { onSuccess: onGone })}>
          Yes, take it off
        </Button>
        <Button variant="subtle" onClick={() => ask(false)}>
          Keep it
        </Button>
      </div>
    </fieldset>
  )
}
