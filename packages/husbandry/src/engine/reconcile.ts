import type { Quantity, TaskState } from '@fryward/shared'
import type { TaskDraft } from './draft-day.ts'

/** What is kept of a task, as far as working the day out again needs to know. */
export type KeptTask = {
  id: string
  key: string
  state: TaskState
  /** Of everything a draft says; what it was when the task was last written. */
  fingerprint: string
  amount: Quantity | null
}

/** A draft with the fingerprint of all it says: equal drafts have equal ones. */
export type PrintedDraft = TaskDraft & { fingerprint: string }

export type Reconciliation = {
  create: PrintedDraft[]
  /** Open tasks that say something else now. */
  update: { task: KeptTask; draft: PrintedDraft; isAmountChanged: boolean }[]
  /** Open tasks that are no longer wanted. */
  withdraw: KeptTask[]
  /** Withdrawn tasks that are wanted again. */
  reopen: { task: KeptTask; draft: PrintedDraft }[]
}

/**
 * What to do so that the kept list says what the drafts say. Signed off, skipped and missed tasks stay as they are,
 * so doing this twice changes nothing the second time.
 */
export function reconcile({ kept, drafts }: { kept: KeptTask[]; drafts: PrintedDraft[] }): Reconciliation {
  const byKey = new Map(kept.map((task) => [task.key, task]))
  const wanted = new Set(drafts.map((draft) => draft.key))
  const result: Reconciliation = { create: [], update: [], withdraw: [], reopen: [] }
  for (const draft of drafts) {
    const task = byKey.get(draft.key)
    if (!task) result.create.push(draft)
    else if (task.state === 'withdrawn') result.reopen.push({ task, draft })
    else if (task.state === 'open' && task.fingerprint !== draft.fingerprint)
      result.update.push({ task, draft, isAmountChanged: !isSame(task.amount, draft.content.amount) })
  }
  result.withdraw = kept.filter((task) => task.state === 'open' && !wanted.has(task.key))
  return result
}

/** Equal as JSON, whatever the order of keys (the database does not keep it). */
export function isSame(a: unknown, b: unknown): boolean {
  return canonical(a) === canonical(b)
}

function canonical(value: unknown): string {
  return JSON.stringify(value, (_key, inner) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )
}
