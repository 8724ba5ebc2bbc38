import { type FactDraft, isSame } from '@fryward/husbandry'
import { askFor, type FactKind, factDataSchemas, type Id, type Instant, type SubjectKind } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import { actorUserId } from '../context.ts'
import { invalid, notFound, RoomError } from '../errors.ts'
import { findCard, hasBottle } from '../frame/directory.ts'
import { changeSubject } from '../frame/subject-row.ts'
import type { Work } from '../frame/write-in-room.ts'
import { type BeyondBook, heldAgainstBook, isDeparture } from './book.ts'

/** What each kind of fact may be about. */
const subjectsOfKind: Record<FactKind, readonly SubjectKind[]> = {
  count: ['culture', 'clutch', 'larval_batch', 'juvenile_group', 'tank'],
  harvest: ['culture'],
  feeding: ['culture', 'pair', 'larval_batch', 'juvenile_group', 'tank'],
  inoculation: ['culture'],
  water_change: ['culture', 'tank', 'larval_batch'],
  water_test: ['culture', 'tank', 'larval_batch'],
  loss: ['culture', 'tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group'],
  transfer: ['clutch', 'larval_batch', 'juvenile_group'],
  observation: ['room', 'culture', 'tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group'],
  care: ['room', 'culture', 'tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group'],
  spawning: ['clutch'],
  hatch: ['clutch', 'larval_batch'],
  treatment: ['tank', 'pair', 'larval_batch', 'juvenile_group'],
  outcome: ['juvenile_group', 'larval_batch', 'pair'],
  decision: ['clutch'],
}

/** Where animals may move to. */
const homes: readonly SubjectKind[] = ['tank', 'pair', 'clutch', 'larval_batch', 'juvenile_group']

// A phone's clock may run a little ahead of ours. common practice
const clockSlackMs = 2 * 60_000

export type ToKeep = {
  fact: FactDraft
  at: Instant
  signOffId?: Id | undefined
  beyondBook?: BeyondBook | undefined
}

/** Appends one fact after holding it against the room: its subject, its time, and what its kind may say. */
export async function insertFact(work: Work, input: ToKeep): Promise<Id> {
  const batch = factBatch(work)
  const id = await batch.add(input)
  await batch.flush()
  return id
}

export type FactBatch = { add: (input: ToKeep) => Promise<Id>; flush: () => Promise<void> }

/** Gathers the facts of one write, each held against the room as `insertFact` does, and appends them in one statement. */
export function factBatch(work: Work): FactBatch {
  const rows: Prisma.FactCreateManyInput[] = []
  const flush = async () => {
    if (rows.length > 0) await work.tx.fact.createMany({ data: rows.splice(0) })
  }
  const add = async (input: ToKeep) => {
    // The book that a departure is held against has to know what this write has said so far.
    if (isDeparture(input.fact)) await flush()
    const row = { id: uuidv7(), ...(await factRow(work, input)) }
    rows.push(row)
    return row.id
  }
  return { add, flush }
}

async function factRow(work: Work, input: ToKeep): Promise<Omit<Prisma.FactCreateManyInput, 'id'>> {
  const { fact, at } = input
  assertNotInFuture(work, at)
  const subject = await findCard(work, fact.subjectId)
  if (!subject) throw notFound('subject')
  if (!subjectsOfKind[fact.kind].includes(subject.kind))
    throw invalid(
      'subjectId',
      `A ${words(fact.kind)} is about a ${subjectsOfKind[fact.kind].map(words).join(' or a ')}; ${subject.name} is a ${words(subject.kind)}.`,
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
  await assertFits(work, fitting)
  const { beyondBook = { path: 'data.beyondBook' } } = input
  const kept = await heldAgainstBook(work, { fact: fitting, subject, at, beyondBook })
  if (kept.kind === 'decision') {
    await changeSubject(work, { id: subject.id })
    work.audit({
      action: 'clutch.change',
      subjectId: subject.id,
      detail: { intent: kept.data.intent },
      why: `${subject.name} was changed`,
    })
  }
  return {
    roomId: work.roomId,
    kind: fact.kind,
    subjectId: subject.id,
    at,
    receivedAt: work.ctx.now,
    recordedBy: actorUserId(work.ctx.actor),
    signOffId: input.signOffId ?? null,
    data: kept.data as Prisma.InputJsonObject,
    revision: work.revision,
  }
}

export function assertNotInFuture(work: Pick<Work, 'ctx'>, at: Instant, path = 'at'): void {
  if (Date.parse(at) > Date.parse(work.ctx.now) + clockSlackMs)
    throw invalid(path, `${at} is still to come; say when it was done, at the latest now.`, at)
}

/** What only the room can tell: that named things exist, are of the right kind and are large enough. */
async function assertFits(work: Work, fact: FactDraft): Promise<void> {
  if (fact.kind === 'harvest') {
    const culture = await findCard(work, fact.subjectId)
    if (culture?.volumeL != null && fact.data.volumeL > culture.volumeL + 1e-9)
      throw invalid(
        'data.volumeL',
        `${culture.name} holds ${culture.volumeL} L; ${fact.data.volumeL} L cannot come out of it.`,
        fact.data.volumeL,
      )
    for (const part of fact.data.parts)
      if (part.subjectId !== undefined)
        await assertNamed(work, {
          id: part.subjectId,
          kind: part.to === 'culture' ? 'culture' : 'larval_batch',
          path: 'data.parts',
        })
  }
  if (fact.kind === 'water_change') {
    const volumeL = (await findCard(work, fact.subjectId))?.volumeL ?? null
    if (volumeL !== null && Math.max(fact.data.removedL, fact.data.addedL) > volumeL + 1e-9)
      throw invalid(
        'data.removedL',
        `The vessel holds ${volumeL} L; more than that cannot be taken out or put in at once. Record a larger change as several.`,
      )
    if (isSame([fact.data.removedL, fact.data.addedL], [0, 0]))
      throw invalid('data.addedL', 'Water was taken out or put in: say how many litres.')
  }
  if (fact.kind === 'feeding' && fact.data.fromCultureId !== undefined)
    await assertNamed(work, { id: fact.data.fromCultureId, kind: 'culture', path: 'data.fromCultureId' })
  if (fact.kind === 'feeding' && fact.data.concentrateId !== undefined) {
    if (!(await hasBottle(work, fact.data.concentrateId)))
      throw invalid(
        'data.concentrateId',
        'There is no such bottle of concentrate in this room.',
        fact.data.concentrateId,
      )
  }
  if (fact.kind === 'inoculation' && fact.data.fromCultureId !== undefined)
    await assertNamed(work, { id: fact.data.fromCultureId, kind: 'culture', path: 'data.fromCultureId' })
  if (fact.kind === 'transfer') await assertDestination(work, fact)
  if (
    fact.kind === 'count' &&
    fact.data.of !== 'larvae' &&
    fact.data.of !== 'eggs' &&
    fact.data.of !== 'juveniles' &&
    fact.data.volumeMl === undefined
  )
    throw invalid(
      'data.volumeMl',
      'Say how many mL were looked at in each replicate: a count without its volume is no density.',
    )
}

/** Animals arrive where animals live, and a move within one thing is none. */
async function assertDestination(work: Work, fact: Extract<FactDraft, { kind: 'transfer' }>): Promise<void> {
  const { toSubjectId } = fact.data
  await assertNamed(work, { id: toSubjectId, path: 'data.toSubjectId' })
  const destination = await findCard(work, toSubjectId)
  if (toSubjectId === fact.subjectId || !destination || !homes.includes(destination.kind))
    throw invalid(
      'data.toSubjectId',
      `Animals move to another ${homes.map(words).join(' or ')}; ${destination?.name ?? 'this'} is none.`,
      toSubjectId,
    )
}

async function assertNamed(work: Work, named: { id: Id; kind?: SubjectKind; path: string }): Promise<void> {
  const subject = await findCard(work, named.id)
  if (!subject || (named.kind && subject.kind !== named.kind))
    throw invalid(named.path, `There is no such ${words(named.kind ?? 'tank')} in this room.`, named.id)
}

const words = (word: string): string => word.replaceAll('_', ' ')
