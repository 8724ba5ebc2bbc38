import type { Id } from '@fryward/shared'
import { listSubjectCards, type SubjectCard, type Transaction } from '@fryward/store'
import type { Work } from './write-in-room.ts'

// A write that holds many records asks about the same few things again and again; within one transaction that holds the
// room's lock they do not change behind its back.
const directories = new WeakMap<Transaction, Map<Id, SubjectCard>>()

/** The thing with this id in the write's room; what the write itself has just made is found too. */
export async function findCard(work: Pick<Work, 'tx' | 'roomId'>, id: Id): Promise<SubjectCard | null> {
  return directories.get(work.tx)?.get(id) ?? (await read(work)).get(id) ?? null
}

async function read({ tx, roomId }: Pick<Work, 'tx' | 'roomId'>): Promise<Map<Id, SubjectCard>> {
  const cards = new Map((await listSubjectCards(tx, roomId)).map((card) => [card.id, card]))
  directories.set(tx, cards)
  return cards
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
