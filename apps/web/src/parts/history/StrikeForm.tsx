'use client'

import type { Id } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { Form } from '@/base/forms/Form.tsx'
import { useRoom } from '@/base/room/room-context.tsx'
import { useStrikeFact } from '@/parts/facts/queries.ts'

/** Why it was a mistake; the entry stays, struck through. */
export function StrikeForm({ factId, onClose }: { factId: Id; onClose: () => void }) {
  const strike = useStrikeFact(useRoom().id)
  const [reason, setReason] = useState('')
  return (
    <Form
      submitLabel="Strike it out"
      isBusy={strike.isPending}
      error={strike.error}
      onSubmit={() => strike.mutate({ factId, reason }, { onSuccess: onClose })}
      onCancel={onClose}
    >
      <TextInput
        label="What was wrong with it?"
        description="Then record it again as it was, if it was."
        required
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
      />
    </Form>
  )
}
