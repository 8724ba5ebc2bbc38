'use client'

import type { Task } from '@fryward/shared'
import { Textarea } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { useToast } from '@/base/ui/toast.tsx'
import { closeTask } from '@/parts/tasks/open-task.ts'
import { useSkip } from '@/parts/tasks/queries.ts'

/** Reasons that come up most; any other is typed. */
const commonReasons = [
  'Not needed today',
  'Ran out of what it takes',
  'No time in this round',
  'Did something else instead',
]

export function SkipForm({ task, onCancel }: { task: Task; onCancel: () => void }) {
  const skip = useSkip(useRoom())
  const toast = useToast()
  const typed = useDraft({ reason: '' }, `skip/${task.id}`)
  const { reason } = typed.draft
  const [error, setError] = useState<string>()
  const setReason = (text: string) => {
    setError(undefined)
    typed.change({ reason: text })
  }
  const place = useRef<HTMLDivElement>(null)
  // The button that opened this is gone, and the sheet is scrolled to where it was.
  useEffect(() => place.current?.querySelector('input')?.focus(), [])
  const send = () => {
    if (reason.trim().length < 3) return setError('Say in a few words why, so that the next person knows.')
    skip.mutate(
      { task, body: { reason: reason.trim() }, draftKey: typed.draftKey },
      {
        onSuccess: () => {
          toast({ text: `Skipped: ${task.subject.name}` })
          closeTask()
        },
      },
    )
  }
  return (
    <Form
      submitLabel="Skip this"
      isBusy={skip.isPending}
      error={skip.error}
      onSubmit={send}
      onCancel={onCancel}
      onGoOn={closeTask}
      typed={typed}
    >
      <div ref={place}>
        <ChoiceChips
          legend="Why skip it?"
          choices={commonReasons.map((text) => ({ value: text, label: text }))}
          value={reason}
          onChoose={setReason}
        />
      </div>
      <Textarea
        label="In your own words"
        value={reason}
        onChange={(event) => setReason(event.currentTarget.value)}
        error={error}
        minRows={2}
        autosize={false}
      />
    </Form>
  )
}
