import type { Task } from '@fryward/shared'
import type { UnitVoice } from '@fryward/words'
import { type Drafts, readField, startDrafts } from './field-draft.ts'

export type TaskReading = {
  values: Record<string, unknown>
  /** Field name to what is wrong with it. */
  errors: Record<string, string>
  /** Field name to the question to ask before it is sent. */
  improbable: Record<string, string>
}

/** An optional list of destinations left as suggested means "as suggested": it is not sent. */
const isAsSuggested = (task: Task, field: Task['fields'][number], drafts: Drafts, voice: UnitVoice) =>
  field.type === 'parts' &&
  !field.isRequired &&
  JSON.stringify(drafts[field.name]) === JSON.stringify(startDrafts(task, voice)[field.name])

/** Reads all fields of a task at once. */
export function readTask(task: Task, drafts: Drafts, voice: UnitVoice): TaskReading {
  const reading: TaskReading = { values: {}, errors: {}, improbable: {} }
  for (const field of task.fields) {
    if (isAsSuggested(task, field, drafts, voice)) continue
    const draft = drafts[field.name]
    const one = draft ? readField(field, draft, voice) : ({ is: 'empty' } as const)
    if (one.is === 'wrong') reading.errors[field.name] = one.message
    if (one.is === 'empty' && field.isRequired) reading.errors[field.name] = 'Needed to go on.'
    if (one.is === 'value') {
      reading.values[field.name] = one.value
      if (one.improbable) reading.improbable[field.name] = one.improbable
    }
  }
  return reading
}
