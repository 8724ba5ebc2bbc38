import type { Id } from '@fryward/shared'
import { idOf, type KeptDraft, type Queued } from './queued.ts'

/** What a device keeps: commands in the order they were meant, and drafts by their place. */
export type KeptStore = {
  /** False where all of it goes with the page. */
  isLasting: boolean
  queue: () => Promise<Queued[]>
  /**
   * Puts a command last, with the draft it was made of, which leaves the drafts; one that was refused before and is
   * corrected by this goes. A command that is there already stays as it was.
   */
  add: (queued: Queued) => Promise<void>
  replace: (queued: Queued) => Promise<void>
  remove: (id: Id) => Promise<void>
  drafts: () => Promise<[string, KeptDraft][]>
  keepDraft: (key: string, draft: KeptDraft) => Promise<void>
  dropDraft: (key: string) => Promise<void>
}

export const isCorrectedBy = (old: Queued, by: Queued): boolean =>
  old.refusal !== undefined && old.draftKey !== undefined && old.draftKey === by.draftKey

/** For a browser that lets nothing be kept. */
export function memoryStore(): KeptStore {
  let queue: Queued[] = []
  const drafts = new Map<string, KeptDraft>()
  return {
    isLasting: false,
    queue: async () => [...queue],
    add: async (queued) => {
      if (queue.some((one) => idOf(one) === idOf(queued))) return
      queue = [...queue.filter((one) => !isCorrectedBy(one, queued)), queued]
      if (queued.draftKey !== undefined) drafts.delete(queued.draftKey)
    },
    replace: async (queued) => {
      queue = queue.map((one) => (idOf(one) === idOf(queued) ? queued : one))
    },
    remove: async (id) => {
      queue = queue.filter((one) => idOf(one) !== id)
    },
    drafts: async () => [...drafts],
    keepDraft: async (key, draft) => void drafts.set(key, draft),
    dropDraft: async (key) => void drafts.delete(key),
  }
}
