import type { HandOverNote } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { nameOf, userNames } from '../people/user-names.ts'

export const noteIncludes = { subject: { select: { id: true, kind: true, name: true } } } as const
type NoteRow = Prisma.NoteGetPayload<{ include: typeof noteIncludes }>

export async function toNotes(tx: Transaction, rows: readonly NoteRow[]): Promise<HandOverNote[]> {
  const names = await userNames(
    tx,
    rows.flatMap((row) => [row.writtenBy, ...(row.settledBy ? [row.settledBy] : [])]),
  )
  return rows.map((row) => ({
    id: row.id,
    at: row.at.toISOString(),
    byName: nameOf(names, row.writtenBy),
    text: row.text,
    isWorry: row.isWorry,
    subject: row.subject,
    settledAt: row.settledAt?.toISOString() ?? null,
    settledByName: row.settledBy ? nameOf(names, row.settledBy) : null,
  }))
}
