'use client'

import type { OtherSpecies } from '@fryward/shared'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { OtherFields } from './OtherFields.tsx'
import { useChangeOtherSpecies } from './queries.ts'
import { readOther } from './typed-species.ts'

type Props = { id: string; said: OtherSpecies; onDone: () => void }

/** Says anew what is known of a species without a profile, for every pair, batch and group of it. */
export function OtherSpeciesForm({ id, said, onDone }: Props) {
  const room = useRoom()
  const typed = useDraft(
    { name: said.name, days: said.eggDays === null ? '' : String(said.eggDays), care: said.care },
    `species/${id}`,
  )
  const change = useChangeOtherSpecies(room.id, id, { draftKey: typed.draftKey, about: said.name })
  const [missing, setMissing] = useState<string>()
  const send = () => {
    const read = readOther(typed.draft, room)
    if ('missing' in read) return setMissing(`Say ${read.missing}.`)
    setMissing(undefined)
    const { id: _id, ...fields } = read
    change.mutate(fields, { onSuccess: onDone })
  }
  return (
    <Form
      submitLabel="Save"
      isBusy={change.isPending}
      error={change.error}
      onSubmit={send}
      onCancel={onDone}
      typed={typed}
      onGoOn={onDone}
    >
      <p>What you say holds for every pair, batch and group of this species in the room, and their tasks follow.</p>
      <OtherFields other={typed.draft} onOther={typed.change} />
      {missing && <Notice tone="worry" title={missing} />}
    </Form>
  )
}
