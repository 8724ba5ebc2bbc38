import type { Id, Role } from '@fryward/shared'
import { type AuditRow, advanceRevision, closeRevision, type Transaction } from '@fryward/store'
import { actorName, actorUserId, type Context } from '../context.ts'
import { noSuchRoom } from '../errors.ts'
import { type Planned, planDays } from '../planning/plan-days.ts'
import { knownState } from '../state/known-states.ts'
import { readStateOfWrite } from '../state/read-state.ts'
import type { RoomState } from '../state/room-state.ts'
import { findAnswer, keepAnswer } from './idempotency.ts'
import { inTurn } from './in-turn.ts'
import { assertMay, type RoomPermission } from './permission.ts'
import { madeIn, transact } from './transact.ts'

/** What a write works with: one transaction that holds the room's lock, and the revision it commits as. */
export type Work = {
  tx: Transaction
  ctx: Context
  roomId: Id
  role: Role
  revision: number
  /** The room as it is with what this write has done so far; in the answer, as it will be committed. */
  state: () => Promise<RoomState>
  /** Every write says what it did; a write that says nothing is refused. */
  audit: (entry: AuditDraft) => void
}

export type AuditDraft = {
  action: string
  subjectId?: Id | null
  detail?: Record<string, unknown> | ((planned: Planned) => Record<string, unknown>)
  /** Why the day may read otherwise from here on, as a task that changed says it; of several the last is told. */
  why?: string
}

export type WriteFrame = {
  ctx: Context
  roomId: Id
  permission: RoomPermission
  /** False where nothing is written that a list could rest on: then the days are left as they are. */
  changesDay?: boolean
}

const unsaid = 'the room changed'
const nothingPlanned: Planned = { created: 0, updated: 0, withdrawn: 0 }

/**
 * The frame of every write in a room: its turn, permission, a kept answer for a repeated request, the room's revision (row lock),
 * the work, the days planned anew, the answer as the room then is, the answer kept, audit rows, listeners told at commit.
 * @param answer read once the days are planned; without it, what the work gave.
 */
export async function writeInRoom<D, T = D>(
  frame: WriteFrame,
  run: (work: Work) => Promise<D>,
  answer?: (work: Work, done: D) => Promise<T>,
): Promise<T> {
  const { ctx, roomId, permission } = frame
  const write = async (tx: Transaction) => {
    await assertMay({ tx, actor: ctx.actor, roomId, permission })
    const replay = await findAnswer<T>(tx, ctx)
    if (replay) return replay.answer
    return workInRoom({ tx, ...frame }, run, answer)
  }
  return inTurn(ctx, roomId, () => transact(ctx, write))
}

/** The inner part of a write, for use cases that hold a transaction already. */
export async function workInRoom<D, T = D>(
  { tx, ctx, roomId, permission, changesDay = true }: WriteFrame & { tx: Transaction },
  run: (work: Work) => Promise<D>,
  answer?: (work: Work, done: D) => Promise<T>,
): Promise<T> {
  const revision = await advanceRevision(tx, roomId)
  if (revision === null) throw noSuchRoom()
  // Asked under the lock: a role taken away while this request waited counts.
  const role = await assertMay({ tx, actor: ctx.actor, roomId, permission })
  const entries: AuditDraft[] = []
  let made: RoomState | undefined
  const work: Work = {
    ...{ tx, ctx, roomId, role, revision },
    state: async () => made ?? (await readStateOfWrite({ tx, ctx, roomId })),
    audit: (entry) => entries.push(entry),
  }
  const done = await run(work)
  if (entries.length === 0) throw new Error('A write in a room left no audit entry; nothing was written.')
  const why = entries.findLast((entry) => entry.why !== undefined)?.why ?? unsaid
  made = changesDay ? await work.state() : unchangedState(work)
  if (made) madeIn(tx, made)
  const planned = changesDay && made ? await planDays(work, { snapshot: made.snapshot, why }) : nothingPlanned
  // Without one, the work's own result is the answer: T is D then.
  const result = answer ? await answer(work, done) : (done as unknown as T)
  await keepAnswer(tx, ctx, result)
  const rows = entries.map((entry) => auditRow(ctx, { entry, planned }))
  await closeRevision(tx, { roomId, revision, now: ctx.now, entries: rows })
  return result
}

/** The state before this write under its revision, where this process knows it: nothing that it holds was written. */
function unchangedState({ ctx, roomId, revision }: Work): RoomState | undefined {
  const known = knownState(ctx.database, roomId)
  return known?.revision === revision - 1 ? { ...known, revision } : undefined
}

const auditRow = ({ actor }: Context, { entry, planned }: { entry: AuditDraft; planned: Planned }): AuditRow => ({
  user_id: actorUserId(actor),
  actor_name: actor.kind === 'system' ? actor.job : actorName(actor),
  action: entry.action,
  subject_id: entry.subjectId ?? null,
  detail: typeof entry.detail === 'function' ? entry.detail(planned) : (entry.detail ?? {}),
})
