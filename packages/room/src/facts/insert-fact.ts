import type { FactDraft } from '@fryward/husbandry'
import { askFor, type FactKind, factDataSchemas, type Id, type Instant } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import { actorUserId } from '../context.ts'
import { invalid, notFound, RoomError } from '../errors.ts'
import { findCard } from '../frame/directory.ts'
import type { Work } from '../frame/write-in-room.ts'
import { type BeyondBook, heldAgainstBook } from './book.ts'
import { isDeparture, rulesOf } from './kinds/index.ts'
import { type KindRules, words } from './kinds/kind-rules.ts'

// A phone's clock may run a little ahead of ours. common practice
const clockSlackMs = 2 * 60_000

export type ToKeep = {
  fact: FactDraft
  at: Instant
  signOffId?: Id | undefined
  beyondBook?: BeyondBook | undefined
}

/** Appends one fact after holding it against the room: its subject, its time, and what its kind may say. */
export async function insertFact(work: Work, input: ToKeep): Promise<KeptFact> {
  const batch = factBatch(work)
  const row = await batch.add(input)
  await batch.flush()
  return row
}

/** A fact as it is written down. */
export type KeptFact = Awaited<ReturnType<typeof factRow>> & { id: Id }
export type FactBatch = { add: (input: ToKeep) => Promise<KeptFact>; flush: () => Promise<void> }

/** Gathers the facts of one write, each held against the room as `insertFact` does, and appends them in one statement. */
export function factBatch(work: Work): FactBatch {
  const rows: Prisma.FactCreateManyInput[] = []
  const flush = async () => {
    if (rows.length > 0) await work.tx.fact.createMany({ data: rows.splice(0) })
  }
  const add = async (input: ToKeep): Promise<KeptFact> => {
    // The book that a departure is held against has to know what this write has said so far.
    if (isDeparture(input.fact)) await flush()
    const row = { id: uuidv7(), ...(await factRow(work, input)) }
    rows.push({ ...row, data: row.data as Prisma.InputJsonObject })
    return row
  }
  return { add, flush }
}

async function factRow(work: Work, input: ToKeep) {
  const { fact, at } = input
  assertNotInFuture(work, at)
  const subject = await findCard(work, fact.subjectId)
  if (!subject) throw notFound('subject')
  // Rules and fact are of one kind, which the compiler cannot follow through a table.
  const { about, assertFits, onKept } = rulesOf(fact.kind) as KindRules<FactKind>
  if (!about.includes(subject.kind))
    throw invalid(
      'subjectId',
      `A ${words(fact.kind)} is about a ${about.map(words).join(' or a ')}; ${subject.name} is a ${words(subject.kind)}.`,
    )
  const parsed = factDataSchemas[fact.kind].safeParse(fact.data)
  if (!parsed.success)
    throw new RoomError('invalid_input', 'The record cannot be kept as it stands; see the fields.', {
      fields: parsed.error.issues.map((issue) => ({
        path: `data.${issue.path.join('.')}`,
        message: askFor(issue.message),
      })),
    })
  const fitting = { kind: fact.kind, data: parsed.data, subjectId: subject.id } as FactDraft
  await assertFits?.(work, fitting)
  const { beyondBook = { path: 'data.beyondBook' } } = input
  const kept = await heldAgainstBook(work, { fact: fitting, subject, at, beyondBook })
  await onKept?.(work, kept, subject)
  return {
    roomId: work.roomId,
    kind: fact.kind,
    subjectId: subject.id,
    at,
    receivedAt: work.ctx.now,
    recordedBy: actorUserId(work.ctx.actor),
    signOffId: input.signOffId ?? null,
    data: kept.data,
    revision: work.revision,
  }
}

export function assertNotInFuture(work: Pick<Work, 'ctx'>, at: Instant, path = 'at'): void {
  if (Date.parse(at) > Date.parse(work.ctx.now) + clockSlackMs)
    throw invalid(path, `${at} is still to come; say when it was done, at the latest now.`, at)
}
