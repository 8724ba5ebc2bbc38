'use client'

import { type CultureEndCause, cultureEndCauses } from '@fryward/shared'
import { cultureEndLabels } from '@fryward/words'
import { TextInput } from '@mantine/core'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { type Endable, useEnd } from './queries.ts'

type Props = { name: string; version: number; endable: Endable; onClose: () => void }

/** Ends a thing with a reason; its tasks go from the lists, its history stays. */
export function EndForm({ name, version, endable, onClose }: Props) {
  const typed = useDraft({ reason: '', cause: '' }, `end/${endable.id}`)
  const { reason } = typed.draft
  const cause: CultureEndCause | undefined = cultureEndCauses.find((one) => one === typed.draft.cause)
  const end = useEnd(useRoom().id, endable, { draftKey: typed.draftKey, about: name })
  return (
    <Form
      submitLabel={`End ${name}`}
      isBusy={end.isPending}
      error={end.error}
      onSubmit={() => end.mutate({ reason, version, ...(cause && { cause }) }, { onSuccess: onClose })}
      onCancel={onClose}
      typed={typed}
    >
      {endable.kind === 'culture' && (
        <ChoiceChips
          legend="What became of it?"
          help="How often cultures crash here is learned from it."
          choices={cultureEndCauses.map((value) => ({ value, label: cultureEndLabels[value] }))}
          value={cause}
          onChoose={(value) => typed.change({ cause: value })}
        />
      )}
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
