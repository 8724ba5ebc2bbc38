'use client'

import type { Pair } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { speciesOptions, tanksOptions, useChangePair, useCreatePair } from '@/features/vessels/queries.ts'
import { CheckBox } from '@/forms/CheckBox.tsx'
import { Form } from '@/forms/Form.tsx'
import { SelectBox } from '@/forms/SelectBox.tsx'
import { useDraft } from '@/forms/use-draft.ts'
import { Notice } from '@/ui/Notice.tsx'

/** A new pair, or changes to one. */
export function PairForm({ pair, onDone }: { pair?: Pair; onDone: () => void }) {
  const room = useRoom()
  const create = useCreatePair(room.id)
  const update = useChangePair(room.id, pair?.id ?? '')
  const tanks = (useQuery(tanksOptions(room.id)).data ?? []).filter((one) => one.endedAt === null)
  const species = useQuery(speciesOptions()).data ?? []
  const { draft, change } = useDraft({
    name: pair?.name ?? '',
    species: pair?.species ?? '',
    tankId: pair?.tankId ?? '',
    nestSite: pair?.nestSite ?? '',
    formedOn: pair?.formedOn ?? '',
    isResting: pair?.isResting ?? false,
    note: pair?.note ?? '',
  })
  const permitNote = species.find((one) => one.id === draft.species)?.permitNote
  const send = () => {
    const fields = {
      name: draft.name,
      tankId: draft.tankId,
      nestSite: draft.nestSite,
      formedOn: draft.formedOn === '' ? null : draft.formedOn,
      isResting: draft.isResting,
      note: draft.note,
    }
    if (pair) update.mutate({ ...fields, version: pair.version }, { onSuccess: onDone })
    else create.mutate({ ...fields, species: draft.species }, { onSuccess: onDone })
  }
  return (
    <Form
      submitLabel={pair ? 'Save' : 'Add the pair'}
      isBusy={create.isPending || update.isPending}
      error={create.error ?? update.error}
      onSubmit={send}
      onCancel={pair && onDone}
    >
      <TextInput
        label="Name"
        required
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      {!pair && (
        <SelectBox
          label="Species"
          isRequired
          value={draft.species}
          onChoose={(value) => change({ species: value })}
          choices={[
            { value: '', label: 'choose' },
            ...species.map((one) => ({ value: one.id, label: `${one.commonName} (${one.scientificName})` })),
          ]}
        />
      )}
      {permitNote && <Notice title="Permits">{permitNote}</Notice>}
      <SelectBox
        label="Home tank"
        isRequired
        help={tanks.length === 0 ? 'Add a tank first: a pair needs a home.' : ''}
        value={draft.tankId}
        onChoose={(tankId) => change({ tankId })}
        choices={[{ value: '', label: 'choose' }, ...tanks.map((one) => ({ value: one.id, label: one.name }))]}
      />
      <TextInput
        label="Nest site"
        description="A pot, a tile, a cave"
        value={draft.nestSite}
        onChange={(event) => change({ nestSite: event.currentTarget.value })}
      />
      <TextInput
        type="date"
        label="Together since"
        value={draft.formedOn}
        onChange={(event) => change({ formedOn: event.currentTarget.value })}
      />
      <CheckBox label="Resting for now" isChecked={draft.isResting} onCheck={(isResting) => change({ isResting })} />
      <TextInput label="Note" value={draft.note} onChange={(event) => change({ note: event.currentTarget.value })} />
    </Form>
  )
}
