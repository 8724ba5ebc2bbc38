import { checkValues, type Outcome, type Rule } from '@fryward/husbandry'
import {
  earlyFeedName,
  earlyFeedQuestion,
  type Id,
  type Instant,
  RoundsSchema,
  type SignOff,
  type Task,
  type TaskContent,
} from '@fryward/shared'
import { Prisma } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { invalid, notFound, RoomError } from '../errors.ts'
import type { BeyondBook } from '../facts/book.ts'
import { assertNotInFuture, type FactBatch, factBatch } from '../facts/insert-fact.ts'
import { findCard } from '../frame/directory.ts'
import { personOf } from '../frame/person-of.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { findRule } from '../rules/find-rule.ts'
import { applyCreation } from './apply-creation.ts'
import { getTaskInRoom } from './get-task.ts'
import { assertItsDay } from './its-day.ts'

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
  return writeInRoom(
    { ctx, roomId, permission: 'sign_off' },
    async (work) => {
      await applySignOffs(work, [{ taskId, input }], (name) => `${name} was seen to`)
    },
    (work) => getTaskInRoom(work, taskId),
  )
}

export type SignOffEntry = { taskId: Id; input: SignOff }

/** Sign-offs of one write: all are looked at first, then kept together, in their order. */
export async function applySignOffs(
  work: Work,
  entries: readonly SignOffEntry[],
  why: (subjectName: string) => string,
): Promise<void> {
  const { tx, ctx, roomId } = work
  const ids = entries.map(({ taskId }) => taskId)
  const tasks = new Map((await tx.task.findMany({ where: { roomId, id: { in: ids } } })).map((task) => [task.id, task]))
  const accepted: Accepted[] = []
  for (const entry of entries) {
    const task = tasks.get(entry.taskId)
    if (!task) throw notFound('task')
    accepted.push(await accept(work, { task, input: entry.input }))
    tasks.set(task.id, { ...task, state: 'done' })
  }
  await tx.signOff.createMany({ data: accepted.map((each) => signOffRow(work, each)) })
  const facts = factBatch(work)
  for (const each of accepted) {
    await write(work, { ...each, facts })
    const { task, values, flags } = each
    const detail = { taskId: task.id, ruleId: task.ruleId, values, ...flags }
    const name = (await findCard(work, task.subjectId))?.name ?? task.ruleId
    work.audit({ action: 'task.sign_off', subjectId: task.subjectId, detail, why: why(name) })
  }
  await facts.flush()
  await tx.task.updateMany({
    where: { roomId, id: { in: ids } },
    data: { state: 'done', reason: null, closedBy: personOf(ctx.actor), closedAt: ctx.now, version: { increment: 1 } },
  })
}

type Row = Prisma.TaskGetPayload<null>
type Accepted = {
  task: Row
  input: SignOff
  signOffId: Id
  doneAt: Instant
  values: Record<string, unknown>
  outcome: Outcome
  flags: { isRepeat: boolean; isAfterTheFact: boolean }
}

/** What a sign-off means, once it is one that may be kept. */
async function accept(work: Work, { task, input }: { task: Row; input: SignOff }): Promise<Accepted> {
  personOf(work.ctx.actor)
  if (!task.isForStandIn && work.role === 'stand_in')
    throw new RoomError('not_allowed', 'This one is not for a stand-in: leave it for a caretaker, or call one.')
  const doneAt = input.doneAt ?? work.ctx.now
  assertDoneAt(work, doneAt)
  await assertItsDay(work, task)
  if (task.state === 'done' && !input.again) throw await alreadyDone(work, task.id)
  const content = task.content as TaskContent
  const { context, subjectId } = task
  const rule = findRule(task.ruleId)
  const values = acceptedValues(content, { input, rule })
  await askIfEarly(work, { task, content, input, doneAt })
  const outcome = rule.record({ context, content, values, doneAt, subjectId })
  const flags = { isRepeat: task.state === 'done', isAfterTheFact: task.state !== 'open' && task.state !== 'done' }
  return { task, input, signOffId: uuidv7(), doneAt, values, outcome, flags }
}

function signOffRow({ roomId, ctx }: Work, accepted: Accepted): Prisma.SignOffCreateManyInput {
  const { task, input, signOffId, doneAt, values, flags } = accepted
  return {
    roomId,
    id: signOffId,
    taskId: task.id,
    userId: personOf(ctx.actor),
    doneAt,
    receivedAt: ctx.now,
    values: values as Prisma.InputJsonObject,
    plannedAmount: (task.content as TaskContent).amount ?? Prisma.JsonNull,
    shownAmount: input.shownAmount ?? Prisma.JsonNull,
    ...flags,
  }
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

function acceptedValues(
  content: TaskContent,
  { input, rule }: { input: SignOff; rule: Pick<Rule, 'check'> },
): Record<string, unknown> {
  const checked = checkValues({ fields: content.fields, values: input.values, confirmed: input.confirmed })
  const problems = [...checked.problems, ...(rule.check?.(checked.values) ?? [])]
  if (problems.length > 0)
    throw new RoomError('invalid_input', 'Some values cannot be kept; see the fields.', { fields: problems })
  if (checked.improbable.length > 0)
    throw new RoomError(
      'needs_confirmation',
      'Some values are unusual. Look again, and confirm them if they are right.',
      { fields: checked.improbable },
    )
  return checked.values
}

/** A feed that is signed off hours before its round is asked about: it may be a slip, and the animals are fed twice. */
async function askIfEarly(
  { tx, roomId }: Work,
  { task, content, input, doneAt }: { task: Row; content: TaskContent; input: SignOff; doneAt: Instant },
): Promise<void> {
  const feed = { verb: content.verb, dueAt: task.dueAt.toISOString() }
  const asked = (roundName: string) => earlyFeedQuestion(feed, { at: doneAt, roundName })
  if (input.confirmed.includes(earlyFeedName) || asked('') === null) return
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId }, select: { rounds: true } })
  const round = RoundsSchema.parse(room.rounds).find(({ id }) => id === task.roundId)
  const message = asked(round?.name ?? 'a later round') ?? ''
  throw new RoomError('needs_confirmation', message, { fields: [{ path: `values.${earlyFeedName}`, message }] })
}

/** More than the book says is asked about like an unusual value, and confirmed by this name. */
const bookQuestion = ({ confirmed }: SignOff): BeyondBook => ({
  path: 'values.beyondBook',
  confirmedAs: confirmed.includes('beyondBook') ? 'Confirmed when it was signed off.' : undefined,
})

async function write(work: Work, accepted: Accepted & { facts: FactBatch }): Promise<void> {
  const { input, outcome, doneAt, signOffId, facts } = accepted
  const beyondBook = bookQuestion(input)
  const creations = outcome.creations ?? []
  // What is brought into being may rest on what this write has said so far.
  if (creations.length > 0) await facts.flush()
  for (const creation of creations) await applyCreation(work, { creation, doneAt, signOffId, beyondBook })
  for (const fact of outcome.facts) await facts.add({ fact, at: doneAt, signOffId, beyondBook })
}
