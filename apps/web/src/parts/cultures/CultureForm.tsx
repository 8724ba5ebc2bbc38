'use client'

import { type Culture, type CultureKind, cultureKinds, type RotiferStrain, rotiferStrains } from '@fryward/shared'
import { cultureKindLabels, strainLabels, typedNumber } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { CheckBox } from '@/base/forms/CheckBox.tsx'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { NumberBox } from '@/base/forms/NumberBox.tsx'
import { SelectBox } from '@/base/forms/SelectBox.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom, useVoice } from '@/base/room/room-context.tsx'
import { concentratesOptions } from '@/parts/concentrates/queries.ts'
import { VesselFields } from '@/parts/vessels/VesselFields.tsx'
import { readVessel, startVessel } from '@/parts/vessels/vessel-draft.ts'
import { culturesOptions, useChangeCulture, useCreateCulture } from './queries.ts'

const orNull = (text: string) => (text === '' ? null : text)

/** A new culture, or changes to one. Kind, parent and start stay as they were once it lives. */
export function CultureForm({ culture, onDone }: { culture?: Culture; onDone: () => void }) {
  const voice = useVoice()
  const room = useRoom()
  const [missing, setMissing] = useState<string>()
  const typed = useDraft(
    {
      ...startVessel(room, culture, { hasFilter: false }),
      kind: culture?.kind ?? ('rotifer' as CultureKind),
      strain: culture?.strain ?? ('L' as RotiferStrain | null),
      isBackup: culture?.isBackup ?? false,
      concentrateId: culture?.concentrateId ?? '',
      airLine: culture?.airLine ?? '',
      shelf: culture?.shelf ?? '',
      tools: culture?.tools ?? '',
      parentCultureId: '',
      density: '',
    },
    `culture/${culture?.id ?? 'new'}`,
  )
  const { draft, change } = typed
  // Cysts that hatch are neither fed nor drawn from another vessel.
  const isHatch = draft.kind === 'artemia_hatch'
  const create = useCreateCulture(room.id, { draftKey: typed.draftKey, about: draft.name })
  const update = useChangeCulture(room.id, culture?.id ?? '', { draftKey: typed.draftKey, about: draft.name })
  const send = () => {
    const vessel = readVessel(draft, room)
    if (typeof vessel === 'string') return setMissing(vessel)
    setMissing(undefined)
    const fields = {
      ...vessel,
      strain: draft.kind === 'rotifer' ? draft.strain : null,
      isBackup: draft.isBackup,
      concentrateId: isHatch ? null : orNull(draft.concentrateId),
      airLine: orNull(draft.airLine.trim()),
      shelf: orNull(draft.shelf.trim()),
      tools: orNull(draft.tools.trim()),
    }
    if (culture) return update.mutate({ ...fields, version: culture.version }, { onSuccess: onDone })
    const startDensityPerMl = typedNumber(draft.density, 'per_mL', voice)
    create.mutate(
      {
        ...fields,
        kind: draft.kind,
        parentCultureId: isHatch ? null : orNull(draft.parentCultureId),
        ...(startDensityPerMl === undefined ? {} : { startDensityPerMl }),
      },
      { onSuccess: onDone },
    )
  }
  return (
    <Form
      submitLabel={culture ? 'Save' : 'Start the culture'}
      isBusy={create.isPending || update.isPending}
      error={create.error ?? update.error}
      onSubmit={send}
      onCancel={culture && onDone}
      typed={typed}
      onGoOn={onDone}
    >
      <VesselFields
        draft={draft}
        change={change}
        bearer="the vessel"
        error={missing}
        kind={<KindChoice draft={draft} change={change} isNew={!culture} />}
        marks={
          <CheckBox
            label="It is a backup: own tools, own air, own bottle, not harvested for larvae"
            isChecked={draft.isBackup}
            onCheck={(isBackup) => change({ isBackup })}
          />
        }
      >
        {!culture && (
          <NumberBox
            label="Density just after starting it"
            help="If it was counted; may be left out"
            unit="per_mL"
            text={draft.density}
            onText={(density) => change({ density })}
          />
        )}
        {!isHatch && <Origins draft={draft} change={change} isNew={!culture} />}
        <SharedWithOthers draft={draft} change={change} />
      </VesselFields>
    </Form>
  )
}

type KindDraft = { kind: CultureKind; strain: RotiferStrain | null }
type Part<D> = { draft: D; change: (part: Partial<D>) => void; isNew: boolean }

/** Of what it is, and of which strain. */
function KindChoice({ draft, change, isNew }: Part<KindDraft>) {
  return (
    <>
      {isNew && (
        <ChoiceChips
          legend="Of what"
          choices={cultureKinds.map((value) => ({ value, label: cultureKindLabels[value] }))}
          value={draft.kind}
          onChoose={(value) => {
            const kind = cultureKinds.find((one) => one === value)
            if (kind) change({ kind })
          }}
        />
      )}
      {draft.kind === 'rotifer' && (
        <ChoiceChips
          legend="Strain"
          choices={rotiferStrains.map((value) => ({ value, label: strainLabels[value] }))}
          value={draft.strain ?? undefined}
          onChoose={(value) => change({ strain: rotiferStrains.find((one) => one === value) ?? null })}
        />
      )}
    </>
  )
}

type OriginDraft = { concentrateId: string; parentCultureId: string }

/** What feeds it and where it came from. */
function Origins({ draft, change, isNew }: Part<OriginDraft>) {
  const room = useRoom()
  const bottles = useQuery(concentratesOptions(room.id)).data ?? []
  const cultures = useQuery(culturesOptions(room.id)).data ?? []
  return (
    <>
      <SelectBox
        label="Fed from bottle"
        help={bottles.length === 0 ? 'Add a bottle of concentrate first: the ration follows from its label.' : ''}
        value={draft.concentrateId}
        onChoose={(concentrateId) => change({ concentrateId })}
        choices={[
          { value: '', label: 'none' },
          ...bottles.filter((one) => !one.isFinished).map((one) => ({ value: one.id, label: one.name })),
        ]}
      />
      {isNew && (
        <SelectBox
          label="Started from"
          value={draft.parentCultureId}
          onChoose={(parentCultureId) => change({ parentCultureId })}
          choices={[
            { value: '', label: 'bought in' },
            ...cultures.filter((one) => one.endedAt === null).map((one) => ({ value: one.id, label: one.name })),
          ]}
        />
      )}
    </>
  )
}

type SharedDraft = { airLine: string; shelf: string; tools: string }

/** What would take it along with others of the same word. */
function SharedWithOthers({ draft, change }: Omit<Part<SharedDraft>, 'isNew'>) {
  const boxes = [
    { name: 'airLine', label: 'Air from', help: 'The pump or line that it hangs on. One word for all that share it.' },
    { name: 'shelf', label: 'Shelf', help: '' },
    {
      name: 'tools',
      label: 'Sieve and tools',
      help: 'Left empty: the same as of the others, or its own if it is a backup.',
    },
  ] as const
  return boxes.map(({ name, label, help }) => (
    <TextInput
      key={name}
      label={label}
      description={help}
      value={draft[name]}
      maxLength={80}
      onChange={({ target }) => change({ [name]: target.value })}
    />
  ))
}
