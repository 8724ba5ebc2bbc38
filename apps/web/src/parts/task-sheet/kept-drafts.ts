import type { Id } from '@fryward/shared'
import type { Drafts } from './field-draft.ts'

/** Where another sheet is opened from the list beside a half-filled one, what was typed waits until the last is closed. */
export const keptDrafts = new Map<Id, Drafts>()

/** Sheets closed while their sign-off waits for the network; what was typed stays until the answer came. */
export const leftWaiting = new Set<Id>()

export function dropDrafts(): void {
  for (const taskId of keptDrafts.keys()) if (!leftWaiting.has(taskId)) keptDrafts.delete(taskId)
}
