'use client'

import { broodWords, typedNumber } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { todayIn } from '@/base/dates/local-time.ts'
import { ChoicesChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { Notice } from '@/base/ui/Notice.tsx'
import { clutchesOptions } from '@/parts/clutches/queries.ts'
import { SpeciesSelect } from '@/parts/species/SpeciesSelect.tsx'
import { readSpecies } from '@/parts/species/typed-species.ts'
import { TankSelect } from '@/parts/tanks/TankSelect.tsx'
import { useCreateBatch } from './queries.ts'

/** A hatch: larvae of one or more clutches, or bought in, in one tank. */
export function BatchForm({ clutchId, onDone }: { clutchId: string | null; onDone: () => void }) {
  const voice = useVoice()
  const room = useRoom()
  const clutches = (useQuery(clutchesOptions(room.id)).data ?? []).filter((one) => one.state === 'incubating')
  const typed = useDraft(
    {
      name: '',
      tankId: '',
      clutchIds: clutchId ? [clutchId] : ([] as string[]),
      species: '',
      hatchedOn: todayIn(room.timeZone),
      larvae: '',
    },
    `batch/new/${clutchId ?? ''}`,
  )
  const { draft, change } = typed
  const create = useCreateBatch(room.id, { draftKey: typed.draftKey, about: draft.name })
  const [missing, setMissing] = useState<string>()
  const words = broodWords(clutches.find(({ id }) => id === draft.clutchIds[0])?.care)
  const send = () => {
    const species = draft.clutchIds.length > 0 ? null : readSpecies(draft.species, voice)
    if (species && 'missing' in species) return setMissing(`Say ${species.missing}.`)
    setMissing(undefined)
    const larvae = typedNumber(draft.larvae, null, voice)
    create.mutate(
      {
        tankId: draft.tankId,
        clutchIds: draft.clutchIds,
        hatchedOn: draft.hatchedOn,
        ...(draft.name.trim() ? { name: draft.name } : {}),
        ...(species ? { species: species.id } : {}),
        ...(larvae === undefined ? {} : { larvae }),
      },
      { onSuccess: onDone },
    )
  }
  return (
    <Form
      submitLabel={`Record the ${words.coming}`}
      isBusy={create.isPending}
      error={create.error}
      onSubmit={send}
      typed={typed}
      onGoOn={onDone}
    >
      {clutches.length > 0 && (
        <ChoicesChips
          legend="From which clutch"
          help="None for larvae bought in"
          choices={clutches.map((one) => ({ value: one.id, label: one.name }))}
          values={draft.clutchIds}
          onChoose={(clutchIds) => change({ clutchIds })}
        />
      )}
      {draft.clutchIds.length === 0 && (
        <SpeciesSelect value={draft.species} onChoose={(species) => change({ species })} />
      )}
      {missing && <Notice tone="worry" title={missing} />}
      <TankSelect label="In tank" value={draft.tankId} onChoose={(tankId) => change({ tankId })} />
      <TextInput
        type="date"
        label={words.night}
        description="The date on which its lights went off"
        required
        value={draft.hatchedOn}
        onChange={(event) => change({ hatchedOn: event.currentTarget.value })}
      />
      <NumberBox
        label={`About how many ${words.many}`}
        help="May be left out"
        isWhole
        text={draft.larvae}
        onText={(larvae) => change({ larvae })}
      />
      <TextInput
        label="Name"
        description="Made up from the clutch when left out"
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
    </Form>
  )
}
