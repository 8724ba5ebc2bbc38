'use client'

import { type Photo, photoLooks } from '@fryward/shared'
import { photoLookLabels } from '@fryward/words'
import { FormProblem } from '@/base/forms/Form.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import styles from './photos.module.css'
import { useMarkPhoto } from './queries.ts'

/** An owner says that a photo is what something looks like here; tasks that ask for it show it then. */
export function WhatItShows({ photo }: { photo: Photo }) {
  const may = useMay('own')
  const mark = useMarkPhoto(useRoom().id)
  if (!may) return photo.shows && <p className={styles.soft}>{photoLookLabels[photo.shows]}</p>
  return (
    <>
      <FormProblem error={mark.error} />
      <SelectBox
        label="This is what it looks like here"
        help="Tasks that ask for it will show this photo."
        value={photo.shows ?? ''}
        choices={[
          { value: '', label: 'of nothing a task asks for' },
          ...photoLooks.map((look) => ({ value: look, label: photoLookLabels[look] })),
        ]}
        onChoose={(value) => {
          const shows = photoLooks.find((look) => look === value) ?? null
          mark.mutate({ photoId: photo.id, shows })
        }}
      />
    </>
  )
}
