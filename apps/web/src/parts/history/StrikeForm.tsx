'use client'

import type { Id } from '@fryward/shared'
import { TextInput } from '@mantine/core'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { useStrikeFact } from '@/parts/facts/queries.ts'

/** Why it was a mistake; the entry stays, struck through. */
export function StrikeForm({ factId, onClose }: { factId: Id; onClose: () => void }) {
  const typed = useDraft({ reason: '' }, `strike/${factId}`)
  const { reason } = typed.draft
  const strike = useStrikeFact(useRoom().id, factId, { draftKey: typed.draftKey })
  return (
    <Form
      submitLabel="Strike it out"
      isBusy={strike.isPending}
      error={strike.error}
      onSubmit={() => strike.mutate({ reason }, { onSuccess: onClose })}
      onCancel={onClose}
      typed={typed}
    >
      <TextInput
        label="What was wrong with it?"
        description="Then record it again as it was, if it was."
        required
        value={reason}
        onChange={(event) => typed.change({ reason: event.currentTarget.value })}
      />
    </Form>
  )
}
