import type { AuditEntry, AuditPageSchema, AuditQuerySchema, Id, RoomEvent } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import type { z } from 'zod'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'

type AuditRow = Prisma.AuditEntryGetPayload<object>

export async function listAudit({
  ctx,
  roomId,
  query,
}: {
  ctx: Context
  roomId: Id
  query: z.infer<typeof AuditQuerySchema>
}): Promise<z.infer<typeof AuditPageSchema>> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const page = await tx.auditEntry.findMany({
      where: { roomId, revision: query.before ? { lt: query.before } : undefined },
      orderBy: [{ revision: 'desc' }, { ordinal: 'asc' }],
      take: query.limit,
    })
    const last = page.at(-1)
    const isFull = last !== undefined && page.length === query.limit
    // A page never ends inside a revision: the next one starts below it.
    const rest = isFull
      ? await tx.auditEntry.findMany({
          where: { roomId, revision: last.revision, ordinal: { gt: last.ordinal } },
          orderBy: { ordinal: 'asc' },
        })
      : []
    const rows = [...page, ...rest]
    const subjects = await tx.subject.findMany({
      where: { roomId, id: { in: rows.flatMap((row) => (row.subjectId ? [row.subjectId] : [])) } },
      select: { id: true, kind: true },
    })
    const kinds = new Map(subjects.map((subject) => [subject.id, subject.kind]))
    return {
      entries: rows.map((row) => toEntry(row, kinds)),
      nextBefore: isFull ? last.revision : null,
    }
  })
}

function toEntry(row: AuditRow, kinds: ReadonlyMap<string, AuditEntry['subjectKind']>): AuditEntry {
  return {
    revision: row.revision,
    at: row.at.toISOString(),
    actor: row.userId
      ? { kind: 'person', userId: row.userId, name: row.actorName }
      : { kind: 'system', job: row.actorName },
    action: row.action,
    subjectId: row.subjectId,
    subjectKind: row.subjectId ? (kinds.get(row.subjectId) ?? null) : null,
    detail: row.detail as AuditEntry['detail'],
  }
}

// One turn of a catch-up; whoever listens asks again until nothing is left.
const eventsAtOnce = 500

/** The next events of a room after a revision, oldest first, one a revision; for people of the room only. */
export async function listEvents({
  ctx,
  roomId,
  afterRevision,
}: {
  ctx: Context
  roomId: Id
  afterRevision: number
}): Promise<RoomEvent[]> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const rows = await tx.auditEntry.findMany({
      where: { roomId, revision: { gt: afterRevision } },
      orderBy: [{ revision: 'asc' }, { ordinal: 'asc' }],
      take: eventsAtOnce,
    })
    const events = toEvents(rows)
    // The last revision of a full turn may have been cut: it comes whole with the next one.
    return rows.length === eventsAtOnce && events.length > 1 ? events.slice(0, -1) : events
  })
}

function toEvents(rows: AuditRow[]): RoomEvent[] {
  const events = new Map<number, RoomEvent>()
  for (const row of rows) {
    const event = events.get(row.revision) ?? {
      revision: row.revision,
      actions: [],
      byName: row.userId ? row.actorName : null,
      subjectIds: [],
    }
    event.actions.push(row.action)
    if (row.subjectId && !event.subjectIds.includes(row.subjectId)) event.subjectIds.push(row.subjectId)
    events.set(row.revision, event)
  }
  return [...events.values()]
}

/** The revision a new listener starts from. */
export async function currentRevision({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<number> {
  return readInRoom(
    { ctx, roomId },
    async ({ tx }: { tx: Transaction }) =>
      (await tx.room.findUniqueOrThrow({ where: { id: roomId }, select: { revision: true } })).revision,
  )
}
