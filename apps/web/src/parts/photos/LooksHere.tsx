'use client'

import type { PhotoLook } from '@fryward/shared'
import { photoLookLabels } from '@fryward/words'
import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/base/room/room-context.tsx'
import styles from './photos.module.css'
import { looksOptions, photoUrl } from './queries.ts'

/** The room's own pictures of what a task asks somebody to know by sight; nothing where the owner gave none. */
export function LooksHere({ looks }: { looks: readonly PhotoLook[] }) {
  const room = useRoom()
  const marked = useQuery(looksOptions(room.id)).data ?? []
  const shown = looks.flatMap((look) => marked.find(({ shows }) => shows === look) ?? [])
  if (shown.length === 0) return null
  return (
    <ul className={styles.looks} aria-label="What it looks like here">
      {shown.map((photo) => (
        <li key={photo.id}>
          {/* biome-ignore lint/performance/noImgElement: the API serves its own sizes, for the room's people only */}
          <img className={styles.lookImage} src={photoUrl(room.id, photo.id, 'thumbnail')} alt="" />
          <span>{photo.shows && photoLookLabels[photo.shows]}</span>
        </li>
      ))}
    </ul>
  )
}
