'use client'

import type { JuvenileGroup } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useRoom } from '@/features/rooms/room-context.tsx'
import { tanksOptions, useChangeGroup } from '@/features/vessels/queries.ts'
import { Form } from '@/forms/Form.tsx'
import { SelectBox } from '@/forms/SelectBox.tsx'
import { useDraft } from '@/forms/use-draft.ts'

export function GroupEditForm({ group, onDone }: { group: JuvenileGroup; onDone: () => void }) {
  const room = useRoom()
  const update = useChangeGroup(room.id, group.id)
  const tanks = (useQuery(tanksOptions(room.id)).data ?? []).filter((one) => one.endedAt === null)
  const { draft, change } = useDraft({ name: group.name, tankId: group.tankId, note: group.note })
  return (
    <Form
      submitLabel="Save"
      isBusy={update.isPending}
      error={update.error}
      onSubmit={() => update.mutate({ ...draft, version: group.version }, { onSuccess: onDone })}
      onCancel={onDone}
    >
      <TextInput
        label="Name"
        required
        value={draft.name}
        onChange={(event) => change({ name: event.currentTarget.value })}
      />
      <SelectBox
        label="In tank"
        value={draft.tankId}
        onChoose={(tankId) => change({ tankId })}
        choices={tanks.map((one) => ({ value: one.id, label: one.name }))}
      />
      <TextInput label="Note" value={draft.note} onChange={(event) => change({ note: event.currentTarget.value })} />
    </Form>
  )
}
