'use client'

import type { Id } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { TankSelect } from './TankSelect.tsx'

type Housed = { name: string; tankId: Id; note: string; version: number }
type Props = {
  thing: Housed
  /** Its place among the drafts. */
  what: string
  isBusy: boolean
  error: Error | null
  onSave: (changed: Housed) => void
  onCancel: () => void
}

/** Changes to a batch or a group: what it is called, where it lives, what is to be known of it. */
export function HousedEditForm({ thing, what, isBusy, error, onSave, onCancel }: Props) {
  const typed = useDraft({ name: thing.name, tankId: thing.tankId, note: thing.note }, what)
  const { draft, change } = typed
  return (
    <Form
      submitLabel="Save"
      isBusy={isBusy}
      error={error}
      onSubmit={() => onSave({ ...draft, version: thing.version })}
      onCancel={onCancel}
      typed={typed}
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
