import { createHash } from 'node:crypto'
import { setImmediate } from 'node:timers/promises'
import {
  addDays,
  addMinutes,
  type DayDrafts,
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
import type { Id, Instant, PlainDate } from '@fryward/shared'
import {
  insertTasks,
  keepDayLists,
  listKeptTasks,
  listNewcomers,
  type Newcomer,
  rewriteTasks,
  type Transaction,
} from '@fryward/store'
import { uuidv7 } from 'uuidv7'

/** A write under the room's lock, as far as planning needs it. */
type Work = Read & { revision: number }
type Read = { tx: Transaction; roomId: Id; ctx: { now: Instant } }

type DraftedDay = DayDrafts & { date: PlainDate }

// Nothing on the lists of today and tomorrow was due longer ago, so that whatever is older joined before it.
const newcomerMinutes = 2 * 24 * 60

export type Planned = { created: number; updated: number; withdrawn: number }

/** Works out today's and tomorrow's lists again; days that nobody has opened yet are opened. */
export async function planDays(
  work: Work,
  { snapshot, why }: { snapshot: RoomSnapshot; why: string },
): Promise<Planned> {
  const { tx, roomId, ctx } = work
  const { days, plan } = await workOut(work, snapshot)
  await keep(work, { plan, why })
  await keepDayLists(tx, {
    roomId,
    now: ctx.now,
    revision: work.revision,
    days: days.map(({ date, gaps }) => ({ on_date: date, gaps })),
  })
  return counts(plan)
}

/** What working today's and tomorrow's lists out again would change of them; nothing is written. */
export const changesOfDays = async (read: Read, snapshot: RoomSnapshot): Promise<Planned> =>
  counts((await workOut(read, snapshot)).plan)

async function workOut(read: Read, snapshot: RoomSnapshot): Promise<{ days: DraftedDay[]; plan: Reconciliation }> {
  const { now } = read.ctx
  const today = localDate({ timeZone: snapshot.room.timeZone, at: now })
  const dates = [today, addDays(today, 1)]
  // Both days go through each statement together: this runs at every write. PostgreSQL reads while they are drafted.
  const [days, { kept, young }] = await Promise.all([draftDays(snapshot, dates), readForDays(read, dates)])
  const drawn = days.flatMap(({ drafts }) => drafts)
  const drafts = withGrace(drawn, young).map(printed)
  const keptKeys = new Set(kept.map((task) => task.key))
  const plan = reconcile({
    kept,
    drafts: drafts.filter((draft) => draft.closesAt > now || keptKeys.has(draft.key)),
  })
  return { days, plan }
}

async function keep(work: Work, { plan, why }: { plan: Reconciliation; why: string }): Promise<void> {
  const { tx, roomId, ctx } = work
  await insertTasks(tx, { roomId, rows: plan.create.map(newTask), now: ctx.now })
  const changes = [...plan.update, ...plan.reopen.map((reopened) => ({ ...reopened, isAmountChanged: false }))]
  await rewriteTasks(tx, { roomId, rows: changes.map(rewritten), revision: work.revision, now: ctx.now, why })
  if (plan.withdraw.length === 0) return
  await tx.task.updateMany({
    where: { roomId, id: { in: plan.withdraw.map((task) => task.id) } },
    data: {
      state: 'withdrawn',
      reason: why,
      closedAt: ctx.now,
      version: { increment: 1 },
    },
  })
}

/** One day after the other, and between them a turn for whatever else this process has to do. */
async function draftDays(snapshot: RoomSnapshot, dates: readonly PlainDate[]): Promise<DraftedDay[]> {
  const days: DraftedDay[] = []
  for (const date of dates) {
    await setImmediate()
    days.push({ date, ...draftDay({ snapshot, date, rules }) })
  }
  return days
}

/** What was drafted before, and when things that are new came. */
async function readForDays({ tx, roomId, ctx }: Read, dates: readonly PlainDate[]) {
  // The longer answer first, so that only the shorter is still on its way when the second day is drafted.
  const kept: KeptTask[] = await listKeptTasks(tx, { roomId, dates })
  const young = await listNewcomers(tx, { roomId, since: addMinutes(ctx.now, -newcomerMinutes) })
  return { kept, young }
}

/** What joined the room after its round had begun is not late before it has been there as long as others get. */
function withGrace(drafts: TaskDraft[], young: readonly Newcomer[]): TaskDraft[] {
  if (young.length === 0) return drafts
  const since = new Map(young.map(({ id, createdMs }) => [id, createdMs]))
  return drafts.map((draft) => {
    const waitedMs = (since.get(draft.subjectId) ?? 0) - Date.parse(draft.dueAt)
    if (waitedMs <= 0) return draft
    return { ...draft, lateAt: new Date(Date.parse(draft.lateAt) + waitedMs).toISOString() }
  })
}

const counts = (plan: Reconciliation): Planned => ({
  created: plan.create.length + plan.reopen.length,
  updated: plan.update.length,
  withdrawn: plan.withdraw.length,
})

// A draft that still holds after a write is the same object as before it.
const prints = new WeakMap<TaskDraft, PrintedDraft>()

/** The same code says the same thing in the same words, so its JSON serves as it is. */
function printed(draft: TaskDraft): PrintedDraft {
  const known = prints.get(draft)
  if (known) return known
  const { content, context, dueAt, lateAt, closesAt, isForStandIn } = draft
  const said = JSON.stringify([content, context, dueAt, lateAt, closesAt, isForStandIn])
  const print = { ...draft, fingerprint: createHash('sha256').update(said).digest('base64url') }
  prints.set(draft, print)
  return print
}

const newTask = (draft: PrintedDraft) => ({
  id: uuidv7(),
  key: draft.key,
  rule_id: draft.ruleId,
  subject_id: draft.subjectId,
  station: draft.station,
  on_date: draft.onDate,
  round_id: draft.roundId,
  ordinal: draft.ordinal,
  ...said(draft),
})

type Change = { task: KeptTask; draft: PrintedDraft; isAmountChanged: boolean }

const rewritten = ({ task, draft, isAmountChanged }: Change) => ({
  id: task.id,
  ...said(draft),
  is_amount_told: isAmountChanged,
  amount_before: task.amount,
})

const said = (draft: PrintedDraft) => ({
  content: draft.content,
  context: draft.context,
  due_at: draft.dueAt,
  late_at: draft.lateAt,
  closes_at: draft.closesAt,
  is_for_stand_in: draft.isForStandIn,
  fingerprint: draft.fingerprint,
})
