import {
  type Book,
  batchBook,
  clutchBook,
  type FactDraft,
  groupBook,
  type Happened,
  mostThatMayLeave,
} from '@fryward/husbandry'
import type { Id, Instant, SubjectKind } from '@fryward/shared'
import { RoomError } from '../errors.ts'
import { findCard } from '../frame/directory.ts'
import type { Work } from '../frame/write-in-room.ts'
import { toFact } from './fact-view.ts'
import { factIncludes } from './get-fact.ts'
import { arrivals, bookKinds, isDeparture } from './kinds/index.ts'

/** How the form that a fact comes from says that more left than the book knew of. */
export type BeyondBook = {
  /** Path of the field that the question points at. */
  path: string
  /** The reason that is kept when the question was answered with yes before it was asked. */
  confirmedAs?: string | undefined
}

type Subject = { id: Id; kind: SubjectKind; name: string }
type Asked = { fact: FactDraft; subject: Subject; at: Instant; beyondBook: BeyondBook }

const books: Partial<Record<SubjectKind, (happened: Happened, subjectId: Id) => Book>> = {
  clutch: clutchBook,
  larval_batch: batchBook,
  juvenile_group: groupBook,
}

/**
 * Holds what leaves a clutch, batch or group against its book. Life is ahead of the book: more than it says is asked
 * about, never refused for good. With a reason the fact itself corrects the book, and striking it out takes that back.
 * @returns the fact as it is to be kept.
 * @throws RoomError needs_confirmation that says what the book says and the ways out.
 */
export async function heldAgainstBook(work: Work, { fact, subject, at, beyondBook }: Asked): Promise<FactDraft> {
  const bookOf = books[subject.kind]
  if (!bookOf || !isDeparture(fact)) return fact
  const most = mostThatMayLeave(bookOf({ facts: await factsOfBook(work, subject.id) }, subject.id), at)
  const { number } = fact.data
  if (most === null || number <= most) return fact
  const reason = fact.data.beyondBook ?? beyondBook.confirmedAs
  if (reason === undefined) throw question({ subject, number, most, path: beyondBook.path })
  work.audit({
    action: 'book.correct',
    subjectId: subject.id,
    detail: { kind: fact.kind, number, bookSaid: most, reason },
  })
  // Spread over all kinds, data and kind would no longer belong together for the compiler.
  return { ...fact, data: { ...fact.data, beyondBook: reason } } as typeof fact
}

function question(asked: { subject: Subject; number: number; most: number; path: string }): RoomError {
  const { subject, number, most, path } = asked
  const isMore = `The book says ${most} in ${subject.name}, and ${number} is more than that.`
  return new RoomError(
    'needs_confirmation',
    `${isMore} Count what is there first, or say why there were more: then the book is corrected with it.`,
    { fields: [{ path, message: `${isMore} Is it right?`, received: number }] },
  )
}

/**
 * The same for a fact that is entered again: whoever struck it out knew of it, so it is refused and not asked about.
 * @throws RoomError `wrong_state` where fewer are left by now.
 */
export async function assertBookHolds(work: Work, { subjectId, at, kind, data }: FactToHold): Promise<void> {
  const fact = { kind, subjectId, data } as FactDraft
  const subject = await findCard(work, subjectId)
  const bookOf = subject && books[subject.kind]
  if (!bookOf || !isDeparture(fact) || fact.data.beyondBook !== undefined) return
  const most = mostThatMayLeave(bookOf({ facts: await factsOfBook(work, subjectId) }, subjectId), at.toISOString())
  if (most === null || fact.data.number <= most) return
  throw new RoomError(
    'wrong_state',
    `The book says ${most} in ${subject.name} by now, and ${fact.data.number} is more than that. Record it again: then it can be said why there were more.`,
  )
}
type FactToHold = { subjectId: Id; at: Date; kind: FactDraft['kind']; data: unknown }

async function factsOfBook({ tx, roomId }: Work, subjectId: Id) {
  const rows = await tx.fact.findMany({
    where: {
      roomId,
      struckAt: null,
      OR: [
        { subjectId, kind: { in: bookKinds } },
        ...arrivals.map(({ kind, field }) => ({ kind, data: { path: [field], equals: subjectId } })),
      ],
    },
    include: factIncludes,
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  })
  // Who wrote them does not matter here.
  return rows.map((row) => toFact(row, new Map()))
}
