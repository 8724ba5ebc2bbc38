'use client'

import type { Task } from '@fryward/shared'
import { useDraft } from '@/base/forms/use-draft.ts'
import { useRoom } from '@/base/room/room-context.tsx'
import { type Drafts, type FieldDraft, startDrafts } from './field-draft.ts'

type Typed = { fields: Drafts; doneAt: string | undefined }

/** What is typed into a task's sheet: kept on the device until it is booked, whatever becomes of the sheet. */
export function useTypedSignOff(task: Task) {
  const start: Typed = { fields: startDrafts(task, useRoom()), doneAt: undefined }
  const typed = useDraft(start, `task/${task.id}`)
  return {
    ...typed,
    // A task that asks for something more by now has it empty.
    drafts: { ...start.fields, ...typed.draft.fields },
    doneAt: typed.draft.doneAt,
    setField: (name: string, draft: FieldDraft) => typed.change({ fields: { ...typed.draft.fields, [name]: draft } }),
    setDoneAt: (doneAt: string | undefined) => typed.change({ doneAt }),
  }
}
