'use client'

import { TextInput } from '@mantine/core'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { type Endable, useEnd } from './queries.ts'

type Props = { name: string; version: number; endable: Endable; onClose: () => void }

/** Ends a thing with a reason; its tasks go from the lists, its history stays. */
export function EndForm({ name, version, endable, onClose }: Props) {
  const typed = useDraft({ reason: '' }, `end/${endable.id}`)
  const { reason } = typed.draft
  const end = useEnd(useRoom().id, endable, { draftKey: typed.draftKey, about: name })
  return (
    <Form
      submitLabel={`End ${name}`}
      isBusy={end.isPending}
      error={end.error}
      onSubmit={() => end.mutate({ reason, version }, { onSuccess: onClose })}
      onCancel={onClose}
      typed={typed}
    >
      <TextInput
        label="Why does it end?"
        description="Its tasks go from the lists; everything recorded stays."
        required
        value={reason}
        onChange={(event) => typed.change({ reason: event.currentTarget.value })}
      />
    </Form>
  )
}
