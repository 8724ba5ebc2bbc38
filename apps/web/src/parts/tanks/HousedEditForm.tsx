'use client'

import type { Id } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { TankSelect } from './TankSelect.tsx'

type Housed = { name: string; tankId: Id; note: string; version: number }
type Props = {
  thing: Housed
  isBusy: boolean
  error: Error | null
  onSave: (changed: Housed) => void
  onCancel: () => void
}

/** Changes to a batch or a group: what it is called, where it lives, what is to be known of it. */
export function HousedEditForm({ thing, isBusy, error, onSave, onCancel }: Props) {
  const { draft, change } = useDraft({ name: thing.name, tankId: thing.tankId, note: thing.note })
  return (
    <Form
      submitLabel="Save"
      isBusy={isBusy}
      error={error}
      onSubmit={() => onSave({ ...draft, version: thing.version })}
      onCancel={onCancel}
    >
      <TextInput
        label="Name"
        required
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      <TankSelect label="In tank" value={draft.tankId} onChoose={(tankId) => change({ tankId })} />
      <TextInput label="Note" value={draft.note} onChange={(event) => change({ note: event.currentTarget.value })} />
    </Form>
  )
}
