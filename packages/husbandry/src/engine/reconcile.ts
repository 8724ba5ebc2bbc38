import type { PlainDate, TaskContent, TaskState } from '@fryward/shared'
import type { TaskDraft } from './draft-day.ts'

/** What is kept of a task, as far as working the day out again needs to know. */
export type KeptTask = {
  id: string
  key: string
  state: TaskState
  onDate: PlainDate
  content: TaskContent
  context: unknown
  dueAt: string
  lateAt: string
  closesAt: string
}

export type Reconciliation = {
  create: TaskDraft[]
  /** Open tasks that say something else now. */
  update: { task: KeptTask; draft: TaskDraft; isAmountChanged: boolean }[]
  /** Open tasks that are no longer wanted. */
  withdraw: KeptTask[]
  /** Withdrawn tasks that are wanted again. */
  reopen: { task: KeptTask; draft: TaskDraft }[]
}

/**
 * What to do so that the kept list says what the drafts say. Signed off, skipped and missed tasks stay as they are,
 * so doing this twice changes nothing the second time.
 */
export function reconcile({ kept, drafts }: { kept: KeptTask[]; drafts: TaskDraft[] }): Reconciliation {
  const byKey = new Map(kept.map((task) => [task.key, task]))
  const wanted = new Set(drafts.map((draft) => draft.key))
  const result: Reconciliation = { create: [], update: [], withdraw: [], reopen: [] }
  for (const draft of drafts) {
    const task = byKey.get(draft.key)
    if (!task) result.create.push(draft)
    else if (task.state === 'withdrawn') result.reopen.push({ task, draft })
    else if (task.state === 'open' && isChanged(task, draft))
      result.update.push({ task, draft, isAmountChanged: !isSame(task.content.amount, draft.content.amount) })
  }
  result.withdraw = kept.filter((task) => task.state === 'open' && !wanted.has(task.key))
  return result
}

function isChanged(task: KeptTask, draft: TaskDraft): boolean {
  return (
    !isSame(task.content, draft.content) ||
    !isSame(task.context, draft.context) ||
    task.dueAt !== draft.dueAt ||
    task.lateAt !== draft.lateAt ||
    task.closesAt !== draft.closesAt
  )
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
