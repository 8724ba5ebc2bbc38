'use client'

import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { type Endable, useEnd } from './queries.ts'

type Props = { name: string; version: number; endable: Endable; onClose: () => void }

/** Ends a thing with a reason; its tasks go from the lists, its history stays. */
export function EndForm({ name, version, endable, onClose }: Props) {
  const end = useEnd(useRoom().id, endable)
  const [reason, setReason] = useState('')
  return (
    <Form
      submitLabel={`End ${name}`}
      isBusy={end.isPending}
      error={end.error}
      onSubmit={() => end.mutate({ reason, version }, { onSuccess: onClose })}
      onCancel={onClose}
    >
      <TextInput
        label="Why does it end?"
        description="Its tasks go from the lists; everything recorded stays."
        required
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
    </Form>
  )
}
