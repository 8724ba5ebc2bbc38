import { checkValues, type Outcome } from '@fryward/husbandry'
import type { Id, Instant, SignOff, Task, TaskContent } from '@fryward/shared'
import { Prisma } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import { type Actor, actorUserId, type Context } from '../context.ts'
import { invalid, notFound, RoomError } from '../errors.ts'
import type { BeyondBook } from '../facts/book.ts'
import { assertNotInFuture, insertFact } from '../facts/insert-fact.ts'
import { replanRoom } from '../planning/replan-room.ts'
import { findRule } from '../rules/find-rule.ts'
import { findCard } from '../work/directory.ts'
import { type Work, writeInRoom } from '../work/write-in-room.ts'
import { applyCreation } from './apply-creation.ts'
import { getTaskInRoom } from './get-task.ts'

// A phone that was offline over a weekend may still tell what was done. common practice
const oldestSignOffDays = 4

/**
 * Signs a task off: open -> done, the records that its values mean, and the day worked out again, in one transaction.
 * A task skipped, withdrawn or missed meanwhile still takes the physical fact, flagged. A task that somebody has
 * done already is refused with who and when, unless `again` says that it really was done twice.
 */
export async function signOffTask({
  ctx,
  roomId,
  taskId,
  input,
}: {
  ctx: Context
  roomId: Id
  taskId: Id
  input: SignOff
}): Promise<Task> {
  return writeInRoom({ ctx, roomId, permission: 'sign_off' }, async (work) => {
    const name = await applySignOff(work, { taskId, input })
    await replanRoom(work, `${name} was seen to`)
    return getTaskInRoom(work, taskId)
  })
}

/** One sign-off without working the day out again, for writes that hold several. Returns the subject's name. */
export async function applySignOff(work: Work, { taskId, input }: { taskId: Id; input: SignOff }): Promise<string> {
  const { tx, ctx, roomId } = work
  const task = await tx.task.findUnique({ where: { roomId_id: { roomId, id: taskId } } })
  if (!task) throw notFound('task')
  const userId = personOf(ctx.actor)
  if (!task.isForStandIn && work.role === 'stand_in')
    throw new RoomError('not_allowed', 'This one is not for a stand-in: leave it for a caretaker, or call one.')
  const doneAt = input.doneAt ?? ctx.now
  assertDoneAt(work, doneAt)
  if (task.state === 'done' && !input.again) throw await alreadyDone(work, taskId)
  const content = task.content as TaskContent
  const values = acceptedValues(content, input)
  const outcome = findRule(task.ruleId).record({
    context: task.context,
    content,
    values,
    doneAt,
    subjectId: task.subjectId,
  })
  const flags = { isRepeat: task.state === 'done', isAfterTheFact: task.state !== 'open' && task.state !== 'done' }
  const signOffId = uuidv7()
  await tx.signOff.create({
    data: {
      roomId,
      id: signOffId,
      taskId,
      userId,
      doneAt,
      receivedAt: ctx.now,
      values: values as Prisma.InputJsonObject,
      plannedAmount: content.amount ?? Prisma.JsonNull,
      shownAmount: input.shownAmount ?? Prisma.JsonNull,
      ...flags,
    },
  })
  await write(work, { outcome, doneAt, signOffId, beyondBook: bookQuestion(input) })
  await tx.task.updateMany({
    where: { roomId, id: taskId },
    data: { state: 'done', reason: null, closedBy: userId, closedAt: ctx.now, version: { increment: 1 } },
  })
  work.audit({
    action: 'task.sign_off',
    subjectId: task.subjectId,
    detail: { taskId, ruleId: task.ruleId, values, ...flags },
  })
  return (await findCard(work, task.subjectId))?.name ?? task.ruleId
}

/** Only a person signs off; the clock has no hands. */
export function personOf(actor: Actor): string {
  const userId = actorUserId(actor)
  if (userId === null) throw new RoomError('not_allowed', 'Only a person signs off.')
  return userId
}

function assertDoneAt(work: Work, doneAt: Instant): void {
  assertNotInFuture(work, doneAt, 'doneAt')
  if (Date.parse(work.ctx.now) - Date.parse(doneAt) > oldestSignOffDays * 86_400_000)
    throw invalid(
      'doneAt',
      `A sign-off tells of the last ${oldestSignOffDays} days; record something older as a fact on its own page.`,
      doneAt,
    )
}

async function alreadyDone(work: Work, taskId: Id): Promise<RoomError> {
  const current = await getTaskInRoom(work, taskId)
  const by = current.signOffs.findLast((signOff) => signOff.undoneAt === null)
  return new RoomError(
    'already_done',
    `${by?.byName ?? 'Somebody'} has done this already. If you really did it too, say so and both are recorded.`,
    { current },
  )
}

function acceptedValues(content: TaskContent, input: SignOff): Record<string, unknown> {
  const checked = checkValues({ fields: content.fields, values: input.values, confirmed: input.confirmed })
  if (checked.problems.length > 0)
    throw new RoomError('invalid_input', 'Some values cannot be kept; see the fields.', { fields: checked.problems })
  if (checked.improbable.length > 0)
    throw new RoomError(
      'needs_confirmation',
      'Some values are unusual. Look again, and confirm them if they are right.',
      { fields: checked.improbable },
    )
  return checked.values
}

/** More than the book says is asked about like an unusual value, and confirmed by this name. */
const bookQuestion = ({ confirmed }: SignOff): BeyondBook => ({
  path: 'values.beyondBook',
  confirmedAs: confirmed.includes('beyondBook') ? 'Confirmed when it was signed off.' : undefined,
})

type Write = { outcome: Outcome; doneAt: Instant; signOffId: Id; beyondBook: BeyondBook }

async function write(work: Work, input: Write): Promise<void> {
  for (const creation of input.outcome.creations ?? []) await applyCreation(work, { creation, ...input })
  const { doneAt: at, signOffId, beyondBook } = input
  for (const fact of input.outcome.facts) await insertFact(work, { fact, at, signOffId, beyondBook })
}
