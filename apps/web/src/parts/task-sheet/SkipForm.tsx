'use client'

import type { Task } from '@fryward/shared'
import { Textarea } from '@mantine/core'
import { useRef, useState } from 'react'
import { makeRequestKey } from '@/base/api/request-key.ts'
import { ChoiceChips } from '@/base/forms/Chips.tsx'
import { Form } from '@/base/forms/Form.tsx'
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
  const skip = useSkip(useRoom().id)
  const toast = useToast()
  const [reason, setReason] = useState('')
  const [error, setError] = useState<string>()
  const requestKey = useRef(makeRequestKey())
  const send = () => {
    if (reason.trim().length < 3) return setError('Say in a few words why, so that the next person knows.')
    skip.mutate(
      { taskId: task.id, body: { reason: reason.trim() }, requestKey: requestKey.current },
      {
        onSuccess: () => {
          toast({ text: `Skipped: ${task.subject.name}` })
          closeTask()
        },
        onError: () => {
          requestKey.current = makeRequestKey()
        },
      },
    )
  }
  return (
    <Form submitLabel="Skip this" isBusy={skip.isPending} error={skip.error} onSubmit={send} onCancel={onCancel}>
      <ChoiceChips
        legend="Why skip it?"
        choices={commonReasons.map((text) => ({ value: text, label: text }))}
        value={reason}
        onChoose={setReason}
      />
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
