'use client'

import { type Tank, type TankKind, tankKinds } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { toTyped, typedNumber } from '@/features/records/typed-number.ts'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { useChangeTank, useCreateTank } from '@/features/vessels/queries.ts'
import { CheckBox } from '@/forms/CheckBox.tsx'
import { ChoiceChips } from '@/forms/Chips.tsx'
import { Form } from '@/forms/Form.tsx'
import { useDraft } from '@/forms/use-draft.ts'
import { tankKindLabels } from '@/words/labels.ts'
import { WaterFields } from './WaterFields.tsx'

/** A new tank, or changes to one. */
export function TankForm({ tank, onDone }: { tank?: Tank; onDone: () => void }) {
  const room = useRoom()
  const create = useCreateTank(room.id)
  const change = useChangeTank(room.id, tank?.id ?? '')
  const [missing, setMissing] = useState<string>()
  const form = useDraft({
    name: tank?.name ?? '',
    kind: tank?.kind ?? ('broodstock' as TankKind),
    volume: toTyped(tank?.volumeL, 'L', room.units),
    temperature: toTyped(tank?.temperatureC ?? room.temperatureC, 'degC', room.units),
    salinity: toTyped(tank?.salinity ?? room.salinity, null, room.units),
    hasFilter: tank?.hasFilter ?? true,
    note: tank?.note ?? '',
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
      kind: draft.kind,
      volumeL,
      temperatureC,
      salinity,
      hasFilter: draft.hasFilter,
      note: draft.note,
    }
    if (tank) change.mutate({ ...fields, version: tank.version }, { onSuccess: onDone })
    else create.mutate(fields, { onSuccess: onDone })
  }
  return (
    <Form
      submitLabel={tank ? 'Save' : 'Add the tank'}
      isBusy={create.isPending || change.isPending}
      error={create.error ?? change.error}
      onSubmit={send}
      onCancel={tank && onDone}
    >
      <TextInput
        label="Name"
        description="As it stands on the tank"
        required
        value={draft.name}
        onChange={(event) => form.change({ name: event.currentTarget.value })}
      />
      <ChoiceChips
        legend="For"
        choices={tankKinds.map((value) => ({ value, label: tankKindLabels[value] }))}
        value={draft.kind}
        onChoose={(value) => {
          const kind = tankKinds.find((one) => one === value)
          if (kind) form.change({ kind })
        }}
      />
      <WaterFields draft={draft} change={form.change} error={missing} />
      <CheckBox
        label="It has a filter"
        isChecked={draft.hasFilter}
        onCheck={(hasFilter) => form.change({ hasFilter })}
      />
      <TextInput
        label="Note"
        value={draft.note}
        onChange={(event) => form.change({ note: event.currentTarget.value })}
      />
    </Form>
  )
}
