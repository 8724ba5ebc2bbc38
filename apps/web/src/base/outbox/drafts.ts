import { openKept } from './database.ts'
import { currentQueue } from './queue-state.ts'
import type { KeptDraft } from './queued.ts'

// from memory: who has not come back to it in two weeks begins anew
const keptDays = 14
const dayMs = 86_400_000

/** What was typed and not sent, by its place: read once, then changed here and written behind. */
const drafts = new Map<string, KeptDraft>()
/** What the device does not have yet; null is to be dropped. */
const unwritten = new Map<string, KeptDraft | null>()
let reading: Promise<void> | undefined
let writing: Promise<void> | undefined

async function read(): Promise<void> {
  const oldest = Date.now() - keptDays * dayMs
  for (const [key, draft] of await (await openKept()).drafts()) {
    if (drafts.has(key) || unwritten.has(key)) continue
    if (Date.parse(draft.keptAt) < oldest) change(key, null)
    else drafts.set(key, draft)
  }
}

/** Resolves once what was kept before this page is known. */
export const readDrafts = (): Promise<void> => {
  reading ??= read()
  return reading
}

async function write(): Promise<void> {
  const store = await openKept()
  for (const [key, draft] of unwritten) {
    unwritten.delete(key)
    await (draft ? store.keepDraft(key, draft) : store.dropDraft(key))
  }
}

function change(key: string, draft: KeptDraft | null): Promise<void> {
  if (draft) drafts.set(key, draft)
  else drafts.delete(key)
  unwritten.set(key, draft)
  writing ??= write().finally(() => {
    writing = undefined
  })
  return writing
}

/** What was typed there: the draft, or what stood in the form when it was sent and then refused. */
export const findDraft = (key: string): KeptDraft | undefined =>
  drafts.get(key) ?? currentQueue().refused.findLast((queued) => queued.draftKey === key)?.draft

/** Places that begin so and hold something typed, the newest first. */
export function draftKeysUnder(start: string): string[] {
  const refused = currentQueue().refused.flatMap(({ draftKey, draft }): [string, KeptDraft][] =>
    draftKey !== undefined && draft ? [[draftKey, draft]] : [],
  )
  return [...drafts, ...refused]
    .filter(([key]) => key.startsWith(start))
    .toSorted(([, a], [, b]) => (a.keptAt < b.keptAt ? 1 : -1))
    .map(([key]) => key)
}

export const keepDraft = (key: string, value: unknown): void =>
  void change(key, { value, keptAt: new Date().toISOString() })

export const dropDraft = (key: string): void => void change(key, null)

/** Takes a draft along with the command that is made of it: the queue keeps it from here on. */
export function takeDraft(key: string): KeptDraft | undefined {
  const draft = drafts.get(key)
  drafts.delete(key)
  // Keeping the command drops it from the device, in one step with it.
  unwritten.delete(key)
  return draft
}

/** What was sent and refused is a draft again, unless something newer is. */
export async function giveBackDraft(key: string, draft: KeptDraft): Promise<void> {
  if (!drafts.has(key)) await change(key, draft)
}
