import type { Transaction } from './database.ts'
import { Prisma } from './generated/client.ts'
import type { SubjectKind } from './generated/enums.ts'

/** What has to be known of a thing to hold a record against it. */
export type SubjectCard = { id: string; kind: SubjectKind; name: string; volumeL: number | null }

// A batch holds the litres of its tank.
const cards = Prisma.sql`
  SELECT subject.id, subject.kind::text AS kind, subject.name,
    coalesce(culture.volume_l, tank.volume_l, home.volume_l) AS "volumeL"
  FROM subject
  LEFT JOIN culture ON culture.room_id = subject.room_id AND culture.id = subject.id
  LEFT JOIN tank ON tank.room_id = subject.room_id AND tank.id = subject.id
  LEFT JOIN larval_batch ON larval_batch.room_id = subject.room_id AND larval_batch.id = subject.id
  LEFT JOIN tank AS home ON home.room_id = larval_batch.room_id AND home.id = larval_batch.tank_id`

/** Every thing of a room, in one query. */
export const listSubjectCards = (tx: Transaction, roomId: string): Promise<SubjectCard[]> =>
  tx.$queryRaw<SubjectCard[]>`${cards} WHERE subject.room_id = ${roomId}::uuid`

export async function findSubjectCard(
  tx: Transaction,
  { roomId, id }: { roomId: string; id: string },
): Promise<SubjectCard | null> {
  const [card = null] = await tx.$queryRaw<SubjectCard[]>`
    ${cards} WHERE subject.room_id = ${roomId}::uuid AND subject.id = ${id}::uuid`
  return card
}
