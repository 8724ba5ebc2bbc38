'use client'

import { typedNumber } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { todayIn } from '@/base/dates/local-time.ts'
import { Form } from '@/base/forms/Form.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { batchesOptions } from '@/parts/batches/queries.ts'
import { BeyondBookBox, isAskedAboutBook } from '@/parts/facts/BeyondBookBox.tsx'
import { SpeciesSelect } from '@/parts/species/SpeciesSelect.tsx'
import { readSpecies } from '@/parts/species/typed-species.ts'
import { TankSelect } from '@/parts/tanks/TankSelect.tsx'
import { useCreateGroup } from './queries.ts'

/** Settled fish moved to grow-out, out of a batch of this room or bought in. */
export function GroupForm({ fromBatchId, onDone }: { fromBatchId: string | null; onDone: () => void }) {
  const voice = useVoice()
  const room = useRoom()
  const batches = (useQuery(batchesOptions(room.id)).data ?? []).filter((one) => one.endedAt === null)
  const [missing, setMissing] = useState<string>()
  const [unsaid, setUnsaid] = useState<string>()
  const [isAsked, setAsked] = useState(false)
  const typed = useDraft(
    {
      name: '',
      tankId: '',
      fromBatchId: fromBatchId ?? '',
      species: '',
      settledOn: todayIn(room.timeZone),
      number: '',
      beyondBook: '',
    },
    `group/new/${fromBatchId ?? ''}`,
  )
  const { draft, change } = typed
  const create = useCreateGroup(room.id, { draftKey: typed.draftKey, about: draft.name })
  const send = () => {
    const number = typedNumber(draft.number, null, voice)
    if (!number && draft.fromBatchId) return setMissing('How many fish, 1 or more.')
    setMissing(undefined)
    const species = draft.fromBatchId ? null : readSpecies(draft.species, voice)
    if (species && 'missing' in species) return setUnsaid(`Say ${species.missing}.`)
    setUnsaid(undefined)
    create.mutate(
      {
        tankId: draft.tankId,
        settledOn: draft.settledOn,
        ...(number ? { number } : {}),
        ...(draft.name.trim() ? { name: draft.name } : {}),
        ...(isAsked ? { beyondBook: draft.beyondBook } : {}),
        ...(draft.fromBatchId ? { fromBatchId: draft.fromBatchId } : {}),
        ...(species ? { species: species.id } : {}),
      },
      { onSuccess: onDone, onError: (error) => setAsked((was) => was || isAskedAboutBook(error)) },
    )
  }
  return (
    <Form
      submitLabel="Record the move"
      isBusy={create.isPending}
      error={create.error}
      onSubmit={send}
      typed={typed}
      onGoOn={onDone}
    >
      <SelectBox
        label="Out of batch"
        value={draft.fromBatchId}
        onChoose={(value) => change({ fromBatchId: value })}
        choices={[{ value: '', label: 'bought in' }, ...batches.map((one) => ({ value: one.id, label: one.name }))]}
      />
      {draft.fromBatchId === '' && <SpeciesSelect value={draft.species} onChoose={(species) => change({ species })} />}
      {unsaid && <Notice tone="worry" title={unsaid} />}
      <NumberBox
        label="How many fish"
        isWhole
        isRequired={draft.fromBatchId !== ''}
        help={draft.fromBatchId === '' ? 'Not known? Leave it empty' : undefined}
        isLarge
        error={missing}
        text={draft.number}
        onText={(number) => change({ number })}
      />
      <TankSelect label="Into tank" value={draft.tankId} onChoose={(tankId) => change({ tankId })} />
      <TextInput
        type="date"
        label="Settled on"
        required
        value={draft.settledOn}
        onChange={(event) => change({ settledOn: event.currentTarget.value })}
      />
      <TextInput
        label="Name"
        description="Made up from the batch when left out"
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      {isAsked && <BeyondBookBox text={draft.beyondBook} onText={(beyondBook) => change({ beyondBook })} />}
    </Form>
  )
}
