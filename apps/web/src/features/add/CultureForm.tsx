'use client'

import { type Culture, type CultureKind, cultureKinds, type RotiferStrain, rotiferStrains } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { toTyped, typedNumber } from '@/features/records/typed-number.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { concentratesOptions, culturesOptions, useChangeCulture, useCreateCulture } from '@/features/vessels/queries.ts'
import { CheckBox } from '@/forms/CheckBox.tsx'
import { ChoiceChips } from '@/forms/Chips.tsx'
import { Form } from '@/forms/Form.tsx'
import { NumberBox } from '@/forms/NumberBox.tsx'
import { SelectBox } from '@/forms/SelectBox.tsx'
import { useDraft } from '@/forms/use-draft.ts'
import { cultureKindLabels, strainLabels } from '@/words/labels.ts'
import { WaterFields } from './WaterFields.tsx'

const orNull = (text: string) => (text === '' ? null : text)

/** A new culture, or changes to one. Kind, parent and start stay as they were once it lives. */
export function CultureForm({ culture, onDone }: { culture?: Culture; onDone: () => void }) {
  const room = useRoom()
  const create = useCreateCulture(room.id)
  const change = useChangeCulture(room.id, culture?.id ?? '')
  const [missing, setMissing] = useState<string>()
  const form = useDraft({
    name: culture?.name ?? '',
    kind: culture?.kind ?? ('rotifer' as CultureKind),
    strain: culture?.strain ?? ('L' as RotiferStrain | null),
    volume: toTyped(culture?.volumeL, 'L', room.units),
    temperature: toTyped(culture?.temperatureC ?? room.temperatureC, 'degC', room.units),
    salinity: toTyped(culture?.salinity ?? room.salinity, null, room.units),
    hasFilter: culture?.hasFilter ?? false,
    isBackup: culture?.isBackup ?? false,
    concentrateId: culture?.concentrateId ?? '',
    parentCultureId: '',
    density: '',
    note: culture?.note ?? '',
  })
  const { draft } = form
  const send = () => {
    const volumeL = typedNumber(draft.volume, 'L', room.units)
    const temperatureC = typedNumber(draft.temperature, 'degC', room.units)
    const salinity = typedNumber(draft.salinity, null, room.units)
    if (volumeL === undefined || temperatureC === undefined || salinity === undefined)
      return setMissing('Volume, temperature and salinity, as numbers.')
    setMissing(undefined)
    const fields = {
      name: draft.name,
      strain: draft.kind === 'rotifer' ? draft.strain : null,
      volumeL,
      temperatureC,
      salinity,
      hasFilter: draft.hasFilter,
      isBackup: draft.isBackup,
      concentrateId: orNull(draft.concentrateId),
      note: draft.note,
    }
    if (culture) return change.mutate({ ...fields, version: culture.version }, { onSuccess: onDone })
    const startDensityPerMl = typedNumber(draft.density, 'per_mL', room.units)
    create.mutate(
      {
        ...fields,
        kind: draft.kind,
        parentCultureId: orNull(draft.parentCultureId),
        ...(startDensityPerMl === undefined ? {} : { startDensityPerMl }),
      },
      { onSuccess: onDone },
    )
  }
  return (
    <Form
      submitLabel={culture ? 'Save' : 'Start the culture'}
      isBusy={create.isPending || change.isPending}
      error={create.error ?? change.error}
      onSubmit={send}
      onCancel={culture && onDone}
    >
      <TextInput
        label="Name"
        description="As it stands on the vessel"
        required
        value={draft.name}
        onChange={(event) => form.change({ name: event.currentTarget.value })}
      />
      {!culture && (
        <ChoiceChips
          legend="Of what"
          choices={cultureKinds.map((value) => ({ value, label: cultureKindLabels[value] }))}
          value={draft.kind}
          onChoose={(value) => {
            const kind = cultureKinds.find((one) => one === value)
            if (kind) form.change({ kind })
          }}
        />
      )}
      {draft.kind === 'rotifer' && (
        <ChoiceChips
          legend="Strain"
          choices={rotiferStrains.map((value) => ({ value, label: strainLabels[value] }))}
          value={draft.strain ?? undefined}
          onChoose={(value) => form.change({ strain: rotiferStrains.find((one) => one === value) ?? null })}
        />
      )}
      <WaterFields draft={draft} change={form.change} error={missing} />
      {!culture && (
        <NumberBox
          label="Density just after starting it"
          help="If it was counted; may be left out"
          unit="per_mL"
          text={draft.density}
          onText={(density) => form.change({ density })}
        />
      )}
      <Origins draft={draft} change={form.change} isNew={!culture} />
      <CheckBox
        label="It has a filter"
        isChecked={draft.hasFilter}
        onCheck={(hasFilter) => form.change({ hasFilter })}
      />
      <CheckBox
        label="It is a backup: own tools, own air, own bottle, not harvested for larvae"
        isChecked={draft.isBackup}
        onCheck={(isBackup) => form.change({ isBackup })}
      />
      <TextInput
        label="Note"
        value={draft.note}
        onChange={(event) => form.change({ note: event.currentTarget.value })}
      />
    </Form>
  )
}

type OriginDraft = { concentrateId: string; parentCultureId: string }

/** What feeds it and where it came from. */
function Origins({
  draft,
  change,
  isNew,
}: {
  draft: OriginDraft
  change: (part: Partial<OriginDraft>) => void
  isNew: boolean
}) {
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
