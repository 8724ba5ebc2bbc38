import type { Id } from '@fryward/shared'
import type { Drafts } from './field-draft.ts'

/** Where another sheet is opened from the list beside a half-filled one, what was typed waits until the last is closed. */
export const keptDrafts = new Map<Id, Drafts>()
