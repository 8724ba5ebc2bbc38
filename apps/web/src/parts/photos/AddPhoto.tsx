'use client'

import type { Id } from '@fryward/shared'
import { useEffect, useId, useState } from 'react'
import { FormProblem } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { StillWaiting } from '@/base/outbox/StillWaiting.tsx'
import { useMay, useRoom } from '@/base/room/room-context.tsx'
import { Button } from '@/base/ui/Button.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import type { Typed } from '@/parts/rooms/queries.ts'
import styles from './photos.module.css'
import { useAddPhoto } from './queries.ts'

type Props = { subjectId: Id; factId?: Id; about: string }

type Chosen = { file: File | undefined; caption: string }
const none: Chosen = { file: undefined, caption: '' }

/** Choose or take a photo, perhaps a word to it, send. The chosen picture is kept on the device until it has arrived. */
export function AddPhoto({ subjectId, factId, about }: Props) {
  const may = useMay('record')
  const typed = useDraft(none, `photo/${subjectId}/${factId ?? ''}`)
  const { file, caption } = typed.draft
  if (!may) return null
  if (file)
    return (
      <SendPhoto
        key={file.name}
        chosen={{ file, caption, subjectId, factId }}
        kept={{ draftKey: typed.draftKey, about }}
        onCaption={(text) => typed.change({ caption: text })}
        onClose={typed.reset}
      />
    )
  const choose = (chosen: File) => typed.change({ file: chosen })
  return (
    <div className={styles.choose}>
      <FilePick label="Add a photo" about={about} onFile={choose} />
      <FilePick label="Take a photo" about={about} isCamera onFile={choose} />
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

type SendProps = {
  chosen: { file: File; caption: string; subjectId: Id; factId: Id | undefined }
  kept: Typed
  onCaption: (text: string) => void
  onClose: () => void
}

function SendPhoto({ chosen, kept, onCaption, onClose }: SendProps) {
  const { add, share } = useAddPhoto(useRoom().id, kept)
  const toast = useToast()
  const captionId = useId()
  const preview = usePreview(chosen.file)
  const send = () =>
    add.mutate(
      { ...chosen, caption: chosen.caption.trim() },
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
          value={chosen.caption}
          onChange={(event) => onCaption(event.currentTarget.value)}
        />
      </label>
      {add.isPending && <progress className={styles.bar} value={share} max={1} aria-label="Sending the photo" />}
      <FormProblem error={add.error} />
      {add.isPending && <StillWaiting onGoOn={onClose} />}
      <div className={styles.choose}>
        <Button type="submit" variant="filled" isBusy={add.isPending}>
          {add.isError ? 'Send it again' : 'Send the photo'}
        </Button>
        {!add.isPending && (
          <Button variant="subtle" onClick={onClose}>
            Cancel
          </Button>
        )}
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
