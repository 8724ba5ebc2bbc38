'use client'

import { typedNumber } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { useCreateConcentrate } from './queries.ts'

const orNull = (text: string) => (text === '' ? null : text)

/** Cells are printed in billions on the bottle: nobody should have to type nine noughts. */
export const billion = 1e9

/** A bottle of microalgae concentrate; its strength is read from its label, never guessed. */
export function ConcentrateForm({ onDone }: { onDone: () => void }) {
  const voice = useVoice()
  const room = useRoom()
  const [missing, setMissing] = useState<string>()
  const typed = useDraft({ name: '', strength: '', openedOn: '', useBy: '' }, 'bottle/new')
  const { draft, change } = typed
  const create = useCreateConcentrate(room.id, { draftKey: typed.draftKey, about: draft.name })
  const send = () => {
    const billions = typedNumber(draft.strength, null, voice)
    if (billions === undefined) return setMissing('The strength from the label, as a number.')
    setMissing(undefined)
    create.mutate(
      {
        name: draft.name,
        cellsPerMl: billions * billion,
        openedOn: orNull(draft.openedOn),
        useBy: orNull(draft.useBy),
      },
      { onSuccess: onDone },
    )
  }
  return (
    <Form
      submitLabel="Add the bottle"
      isBusy={create.isPending}
      error={create.error}
      onSubmit={send}
      typed={typed}
      onGoOn={onDone}
    >
      <TextInput
        label="Name"
        required
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      <NumberBox
        label="Strength from the label"
        help="Every ration follows from this number: read it off the bottle"
        unitWord="billion cells per mL"
        isRequired
        error={missing}
        text={draft.strength}
        onText={(strength) => change({ strength })}
      />
      <TextInput
        type="date"
        label="Opened on"
        value={draft.openedOn}
        onChange={(event) => change({ openedOn: event.currentTarget.value })}
      />
      <TextInput
        type="date"
        label="Use by"
        value={draft.useBy}
        onChange={(event) => change({ useBy: event.currentTarget.value })}
      />
    </Form>
  )
}
