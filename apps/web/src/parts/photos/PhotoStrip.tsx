'use client'

import type { Id, Photo } from '@fryward/shared'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { useRoom } from '@/base/room/room-context.tsx'
import { Bones } from '@/base/ui/Bones.tsx'
import { Loaded } from '@/base/ui/Loaded.tsx'
import { Section } from '@/base/ui/Page.tsx'
import { AddPhoto } from './AddPhoto.tsx'
import { PhotoDialog } from './PhotoDialog.tsx'
import styles from './photos.module.css'
import { photosOptions, photoUrl } from './queries.ts'

/** All photos of a thing, newest first, in one row that scrolls sideways. */
export function PhotoStrip({ subjectId, name, canAdd }: { subjectId: Id; name: string; canAdd: boolean }) {
  const photos = useQuery(photosOptions(useRoom().id, subjectId))
  return (
    <Section title="Photos">
      <Loaded query={photos} skeleton={<Bones heights={[6.4]} />} what="The photos">
        {(data) =>
          data.length > 0 ? (
            <Thumbnails photos={data} />
          ) : (
            <p className={styles.soft}>{canAdd ? 'None yet. A picture says what a count cannot.' : 'None.'}</p>
          )
        }
      </Loaded>
      {canAdd && <AddPhoto subjectId={subjectId} about={name} />}
    </Section>
  )
}

/** Small pictures; each opens in full. */
export function Thumbnails({ photos, isSmall = false }: { photos: Photo[]; isSmall?: boolean }) {
  const room = useRoom()
  const [openId, open] = useState<Id | null>(null)
  const shown = photos.find((photo) => photo.id === openId)
  return (
    <>
      <ul className={styles.strip} data-small={isSmall || undefined}>
        {photos.map((photo) => (
          <li key={photo.id}>
            <button
              type="button"
              className={styles.thumbnail}
              onClick={() => open(photo.id)}
              aria-haspopup="dialog"
              aria-label={`Photo: ${photo.caption || `by ${photo.addedByName}`}`}
            >
              {/* biome-ignore lint/performance/noImgElement: the API serves its own thumbnails, for the room's people only */}
              <img src={photoUrl(room.id, photo.id, 'thumbnail')} alt="" loading="lazy" />
            </button>
          </li>
        ))}
      </ul>
      {shown && <PhotoDialog photo={shown} onClose={() => open(null)} />}
    </>
  )
}
