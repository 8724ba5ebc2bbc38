import type { Id } from '@fryward/shared'
import { findSubjectCard, listSubjectCards, type SubjectCard, type Transaction } from '@fryward/store'
import type { Work } from './write-in-room.ts'

// A write that holds many records asks about the same few things again and again; within one transaction that holds the
// room's lock they do not change behind its back.
const directories = new WeakMap<Transaction, Map<Id, SubjectCard>>()

/** The thing with this id in the write's room; what the write itself has just made is found too. */
export async function findCard({ tx, roomId }: Pick<Work, 'tx' | 'roomId'>, id: Id): Promise<SubjectCard | null> {
  const known = directories.get(tx)
  const found = known?.get(id)
  if (found) return found
  // Most writes are about one thing. Whoever asks about another will ask about more.
  const cards = known ? await listSubjectCards(tx, roomId) : await asList(findSubjectCard(tx, { roomId, id }))
  const directory = new Map(cards.map((card) => [card.id, card]))
  directories.set(tx, directory)
  return directory.get(id) ?? null
}

const asList = async (asked: Promise<SubjectCard | null>): Promise<SubjectCard[]> => {
  const card = await asked
  return card ? [card] : []
}

const bottles = new WeakMap<Transaction, Set<Id>>()

/** Whether the write's room has this bottle of concentrate. */
export async function hasBottle({ tx, roomId }: Pick<Work, 'tx' | 'roomId'>, id: Id): Promise<boolean> {
  if (bottles.get(tx)?.has(id)) return true
  const rows = await tx.concentrate.findMany({ where: { roomId }, select: { id: true } })
  const found = new Set(rows.map((row) => row.id))
  bottles.set(tx, found)
  return found.has(id)
}
