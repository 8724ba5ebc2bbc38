import { createHash } from 'node:crypto'
import {
  addDays,
  draftDay,
  type KeptTask,
  localDate,
  type PrintedDraft,
  type Reconciliation,
  type RoomSnapshot,
  reconcile,
  rules,
  type TaskDraft,
} from '@fryward/husbandry'
import type { PlainDate } from '@fryward/shared'
import { listKeptTasks, type Prisma, rewriteTasks, toDateColumn } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import { loadSnapshot } from '../snapshot/load-snapshot.ts'
import type { Work } from '../work/write-in-room.ts'

export type Replanned = { created: number; updated: number; withdrawn: number }

/** Works out today's and tomorrow's lists again; days that nobody has opened yet are opened. */
export async function replanRoom(work: Work, why: string): Promise<Replanned> {
  const snapshot = await loadSnapshot(work.tx, { roomId: work.roomId, now: work.ctx.now })
  const today = localDate({ timeZone: snapshot.room.timeZone, at: work.ctx.now })
  const totals: Replanned = { created: 0, updated: 0, withdrawn: 0 }
  for (const date of [today, addDays(today, 1)]) {
    const day = await replanDay(work, { snapshot, date, why })
    totals.created += day.created
    totals.updated += day.updated
    totals.withdrawn += day.withdrawn
  }
  return totals
}

async function replanDay(
  work: Work,
  input: { snapshot: RoomSnapshot; date: PlainDate; why: string },
): Promise<Replanned> {
  const { drafts: drawn, gaps } = draftDay({ snapshot: input.snapshot, date: input.date, rules })
  const drafts = (await graceForNewcomers(work, drawn)).map(printed)
  const kept: KeptTask[] = await listKeptTasks(work.tx, { roomId: work.roomId, date: input.date })
  const plan = reconcile({
    kept,
    drafts: drafts.filter((draft) => draft.closesAt > work.ctx.now || kept.some((task) => task.key === draft.key)),
  })
  await createTasks(work, plan.create)
  await rewrite(work, {
    changes: [...plan.update, ...plan.reopen.map((reopened) => ({ ...reopened, isAmountChanged: false }))],
    why: input.why,
  })
  if (plan.withdraw.length > 0) {
    await work.tx.task.updateMany({
      where: { roomId: work.roomId, id: { in: plan.withdraw.map((task) => task.id) } },
      data: {
        state: 'withdrawn',
        reason: `No longer needed: ${input.why}.`,
        closedAt: work.ctx.now,
        version: { increment: 1 },
      },
    })
  }
  const opened = { plannedAt: work.ctx.now, revision: work.revision, gaps: gaps as unknown as Prisma.InputJsonArray }
  await work.tx.dayList.upsert({
    where: { roomId_onDate: { roomId: work.roomId, onDate: toDateColumn(input.date) } },
    create: { roomId: work.roomId, onDate: toDateColumn(input.date), openedAt: work.ctx.now, ...opened },
    update: opened,
  })
  return counts(plan)
}

/** What joined the room after its round had begun is not late before it has been there as long as others get. */
async function graceForNewcomers(work: Work, drafts: TaskDraft[]): Promise<TaskDraft[]> {
  if (drafts.length === 0) return drafts
  const first = new Date(Math.min(...drafts.map((draft) => Date.parse(draft.dueAt))))
  const young = await work.tx.subject.findMany({
    where: { roomId: work.roomId, createdAt: { gt: first } },
    select: { id: true, createdAt: true },
  })
  if (young.length === 0) return drafts
  const since = new Map(young.map((subject) => [subject.id, subject.createdAt.getTime()]))
  return drafts.map((draft) => {
    const waitedMs = (since.get(draft.subjectId) ?? 0) - Date.parse(draft.dueAt)
    if (waitedMs <= 0) return draft
    return { ...draft, lateAt: new Date(Date.parse(draft.lateAt) + waitedMs).toISOString() }
  })
}

const counts = (plan: Reconciliation): Replanned => ({
  created: plan.create.length + plan.reopen.length,
  updated: plan.update.length,
  withdrawn: plan.withdraw.length,
})

/** The same code says the same thing in the same words, so its JSON serves as it is. */
function printed(draft: TaskDraft): PrintedDraft {
  const { content, context, dueAt, lateAt, closesAt, isForStandIn } = draft
  const said = JSON.stringify([content, context, dueAt, lateAt, closesAt, isForStandIn])
  return { ...draft, fingerprint: createHash('sha256').update(said).digest('base64url') }
}

async function createTasks(work: Work, drafts: PrintedDraft[]): Promise<void> {
  if (drafts.length === 0) return
  await work.tx.task.createMany({
    data: drafts.map((draft) => ({
      roomId: work.roomId,
      id: uuidv7(),
      key: draft.key,
      ruleId: draft.ruleId,
      subjectId: draft.subjectId,
      station: draft.station,
      onDate: toDateColumn(draft.onDate),
      roundId: draft.roundId,
      ordinal: draft.ordinal,
      state: 'open' as const,
      createdAt: work.ctx.now,
      ...written(draft),
    })),
    skipDuplicates: true,
  })
}

type Change = { task: KeptTask; draft: PrintedDraft; isAmountChanged: boolean }

async function rewrite(work: Work, { changes, why }: { changes: Change[]; why: string }): Promise<void> {
  const rows = changes.map(({ task, draft }) => ({
    id: task.id,
    content: draft.content,
    context: draft.context,
    due_at: draft.dueAt,
    late_at: draft.lateAt,
    closes_at: draft.closesAt,
    is_for_stand_in: draft.isForStandIn,
    fingerprint: draft.fingerprint,
  }))
  await rewriteTasks(work.tx, { roomId: work.roomId, rows })
  const told = changes.filter((change) => change.isAmountChanged)
  if (told.length === 0) return
  await work.tx.taskChange.createMany({
    data: told.map(({ task, draft }) => ({
      roomId: work.roomId,
      taskId: task.id,
      revision: work.revision,
      at: work.ctx.now,
      before: { amount: task.amount },
      after: { amount: draft.content.amount },
      why,
    })),
  })
}

const written = (draft: PrintedDraft) => ({
  fingerprint: draft.fingerprint,
  dueAt: draft.dueAt,
  lateAt: draft.lateAt,
  closesAt: draft.closesAt,
  isForStandIn: draft.isForStandIn,
  content: draft.content as unknown as Prisma.InputJsonObject,
  context: draft.context as Prisma.InputJsonObject,
})
