'use client'

import type { Pair } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { CheckBox } from '@/base/forms/CheckBox.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { speciesOptions } from '@/parts/species/queries.ts'
import { SpeciesSelect } from '@/parts/species/SpeciesSelect.tsx'
import { hasNest, readSpecies } from '@/parts/species/typed-species.ts'
import { TankSelect } from '@/parts/tanks/TankSelect.tsx'
import { FishOriginSelect, originOf, readOrigin } from './FishOriginSelect.tsx'
import { useChangePair, useCreatePair } from './queries.ts'

/** A new pair, or changes to one. */
export function PairForm({ pair, onDone }: { pair?: Pair; onDone: () => void }) {
  const room = useRoom()
  const species = useQuery(speciesOptions()).data ?? []
  const typed = useDraft(
    {
      name: pair?.name ?? '',
      species: pair?.species ?? '',
      tankId: pair?.tankId ?? '',
      nestSite: pair?.nestSite ?? '',
      formedOn: pair?.formedOn ?? '',
      isResting: pair?.isResting ?? false,
      female: originOf(pair?.femaleFromClutchId, pair?.femaleSameAs),
      male: originOf(pair?.maleFromClutchId, pair?.maleSameAs),
      note: pair?.note ?? '',
    },
    `pair/${pair?.id ?? 'new'}`,
  )
  const { draft, change } = typed
  const create = useCreatePair(room.id, { draftKey: typed.draftKey, about: draft.name })
  const update = useChangePair(room.id, pair?.id ?? '', { draftKey: typed.draftKey, about: draft.name })
  const permitNote = species.find((one) => one.id === draft.species)?.permitNote
  const [missing, setMissing] = useState<string>()
  const send = () => {
    const chosen = readSpecies(draft.species, room)
    if (!pair && 'missing' in chosen) return setMissing(`Say ${chosen.missing}.`)
    setMissing(undefined)
    const [female, male] = [readOrigin(draft.female), readOrigin(draft.male)]
    const fields = {
      name: draft.name,
      tankId: draft.tankId,
      nestSite: draft.nestSite,
      formedOn: draft.formedOn === '' ? null : draft.formedOn,
      isResting: draft.isResting,
      ...{ femaleFromClutchId: female.clutchId, femaleSameAs: female.same },
      ...{ maleFromClutchId: male.clutchId, maleSameAs: male.same },
      note: draft.note,
    }
    if (pair) update.mutate({ ...fields, version: pair.version }, { onSuccess: onDone })
    else if ('id' in chosen) create.mutate({ ...fields, species: chosen.id }, { onSuccess: onDone })
  }
  return (
    <Form
      submitLabel={pair ? 'Save' : 'Add the pair'}
      isBusy={create.isPending || update.isPending}
      error={create.error ?? update.error}
      onSubmit={send}
      onCancel={pair && onDone}
      typed={typed}
      onGoOn={onDone}
    >
      <TextInput
        label="Name"
        required
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      {!pair && <SpeciesSelect value={draft.species} onChoose={(species) => change({ species })} />}
      {missing && <Notice tone="worry" title={missing} />}
      {permitNote && <Notice title="Permits">{permitNote}</Notice>}
      <TankSelect label="Home tank" value={draft.tankId} onChoose={(tankId) => change({ tankId })} />
      {(draft.nestSite !== '' || hasNest(draft.species, species)) && (
        <TextInput
          label="Nest site"
          description="A pot, a tile, a cave"
          value={draft.nestSite}
          onChange={(event) => change({ nestSite: event.currentTarget.value })}
        />
      )}
      <TextInput
        type="date"
        label="Together since"
        value={draft.formedOn}
        onChange={(event) => change({ formedOn: event.currentTarget.value })}
      />
      <CheckBox label="Resting for now" isChecked={draft.isResting} onCheck={(isResting) => change({ isResting })} />
      {(['female', 'male'] as const).map((sex) => (
        <FishOriginSelect
          key={sex}
          label={`The ${sex} is`}
          species={draft.species}
          pair={pair}
          value={draft[sex]}
          onChoose={(origin) => change({ [sex]: origin })}
        />
      ))}
      <TextInput label="Note" value={draft.note} onChange={(event) => change({ note: event.currentTarget.value })} />
    </Form>
  )
}
