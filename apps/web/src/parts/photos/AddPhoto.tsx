'use client'

import type { Id } from '@fryward/shared'
import { useEffect, useId, useRef, useState } from 'react'
import { makeRequestKey } from '@/base/api/request-key.ts'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import styles from './photos.module.css'
import { useAddPhoto } from './queries.ts'

type Props = { subjectId: Id; factId?: Id; about: string }

/** Choose or take a photo, perhaps a word to it, send. The chosen picture stays here until it has arrived. */
export function AddPhoto({ subjectId, factId, about }: Props) {
  const may = useMay('record')
  const [file, setFile] = useState<File>()
  if (!may) return null
  if (file)
    return <SendPhoto key={file.name} file={file} target={{ subjectId, factId }} onClose={() => setFile(undefined)} />
  return (
    <div className={styles.choose}>
      <FilePick label="Add a photo" about={about} onFile={setFile} />
      <FilePick label="Take a photo" about={about} isCamera onFile={setFile} />
    </div>
  )
}

type PickProps = { label: string; about: string; isCamera?: boolean; onFile: (file: File) => void }

function FilePick({ label, about, isCamera = false, onFile }: PickProps) {
  return (
    <label className={styles.pick} data-camera={isCamera || undefined}>
      <input
        type="file"
        accept="image/*"
        {...(isCamera ? { capture: 'environment' as const } : {})}
        aria-label={`${label}: ${about}`}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0]
          if (file) onFile(file)
          event.currentTarget.value = ''
        }}
      />
      <span>{label}</span>
    </label>
  )
}

type SendProps = { file: File; target: { subjectId: Id; factId?: Id | undefined }; onClose: () => void }

function SendPhoto({ file, target, onClose }: SendProps) {
  const { add, share } = useAddPhoto(useRoom().id)
  const toast = useToast()
  const captionId = useId()
  const [caption, setCaption] = useState('')
  const preview = usePreview(file)
  // One key for this picture, so that sending it again after a lost answer adds it once.
  const requestKey = useRef(makeRequestKey())
  const send = () =>
    add.mutate(
      { file, ...target, caption: caption.trim(), requestKey: requestKey.current },
      {
        onSuccess: () => {
          toast({ text: 'The photo is on the record' })
          onClose()
        },
      },
    )
  return (
    <form
      className={styles.send}
      onSubmit={(event) => {
        event.preventDefault()
        if (!add.isPending) send()
      }}
    >
      {/* biome-ignore lint/performance/noImgElement: a picture of this device, not of a server */}
      {preview && <img className={styles.preview} src={preview} alt="The chosen one" />}
      <label className={styles.caption} htmlFor={captionId}>
        A word to it, if you like
        <input
          id={captionId}
          type="text"
          maxLength={300}
          value={caption}
          onChange={(event) => setCaption(event.currentTarget.value)}
        />
      </label>
      {add.isPending && <progress className={styles.bar} value={share} max={1} aria-label="Sending the photo" />}
      <FormProblem error={add.error} />
      <div className={styles.choose}>
        <Button type="submit" variant="filled" isBusy={add.isPending}>
          {add.isError ? 'Send it again' : 'Send the photo'}
        </Button>
        <Button variant="subtle" onClick={onClose}>
          Cancel
        </Button>
      </div>
    </form>
  )
}

/** A picture that this browser cannot show (HEIC, say) has no preview; it is still sent. */
function usePreview(file: File): string | undefined {
  const [url, setUrl] = useState<string>()
  useEffect(() => {
    const made = URL.createObjectURL(file)
    const image = new Image()
    image.onload = () => setUrl(made)
    image.src = made
    return () => URL.revokeObjectURL(made)
  }, [file])
  return url
}
