import { addDays, careOf, clutchNights, clutchState, localDate, type RoomSnapshot } from '@fryward/husbandry'
import type { HandOver, Id, SubjectKind, TaskContent } from '@fryward/shared'
import { type Transaction, toDateColumn } from '@fryward/store'
import type { Context } from '../context.ts'
import { personOf } from '../frame/person-of.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { nameOf, userNames } from '../people/user-names.ts'
import { noteIncludes, toNotes } from './note-view.ts'

const notesShown = 50
/** Signs and deaths of so many days are told. */
const toldForDays = 2
const nightsAhead = 3
const troubleSigns = new Set([
  'swimming_slow',
  'sinking',
  'clumping',
  'foam',
  'bad_smell',
  'ciliates',
  'fighting',
  'not_eating',
  'gasping',
  'spots_or_wounds',
])

type Scope = { tx: Transaction; roomId: Id; ctx: Context }

/** What one caretaker needs to know from the others: what was written since, what was not done, worries, what is coming. */
export async function getHandOver({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<HandOver> {
  return readInRoom({ ctx, roomId }, async ({ tx, state }) => {
    const scope = { tx, roomId, ctx }
    const { snapshot, revision } = await state()
    const look = await tx.lastLook.findUnique({ where: { roomId_userId: { roomId, userId: personOf(ctx.actor) } } })
    const worries = await tx.note.findMany({
      where: { roomId, isWorry: true, settledAt: null },
      include: noteIncludes,
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
    })
    const notes = await tx.note.findMany({
      where: { roomId },
      include: noteIncludes,
      orderBy: [{ at: 'desc' }, { id: 'desc' }],
      take: notesShown,
    })
    return {
      lastLookedAt: look?.at.toISOString() ?? null,
      sinceRevision: look?.revision ?? 0,
      revision,
      since: await sinceOf(scope, look?.revision ?? 0),
      notDone: await notDoneOf(scope, snapshot),
      worries: await toNotes(tx, worries),
      notes: await toNotes(tx, notes),
      signs: signsOf(snapshot, ctx.now),
      losses: lossesOf(snapshot, ctx.now),
      coming: comingOf(snapshot, ctx.now),
    }
  })
}

async function sinceOf({ tx, roomId, ctx }: Scope, revision: number): Promise<HandOver['since']> {
  const from = new Date(Date.parse(ctx.now) - 14 * 86_400_000)
  const rows = await tx.auditEntry.groupBy({
    by: ['actorName', 'action'],
    where: { roomId, revision: { gt: revision }, at: { gte: from }, userId: { not: null } },
    _count: true,
  })
  const people = new Map<string, HandOver['since'][number]>()
  for (const { actorName: byName, action, _count: number } of rows) {
    const line = people.get(byName) ?? { byName, signedOff: 0, skipped: 0, recorded: 0, changed: 0 }
    if (action === 'task.sign_off') line.signedOff += number
    else if (action === 'task.skip') line.skipped += number
    else if (action === 'fact.record' || action.endsWith('.create')) line.recorded += number
    else line.changed += number
    people.set(byName, line)
  }
  return [...people.values()].sort((a, b) => a.byName.localeCompare(b.byName, 'en'))
}

async function notDoneOf({ tx, roomId, ctx }: Scope, snapshot: RoomSnapshot): Promise<HandOver['notDone']> {
  const today = localDate({ timeZone: snapshot.room.timeZone, at: ctx.now })
  const rows = await tx.task.findMany({
    where: {
      roomId,
      onDate: { in: [toDateColumn(today), toDateColumn(addDays(today, -1))] },
      OR: [{ state: { in: ['skipped', 'missed'] } }, { state: 'open', lateAt: { lte: ctx.now } }],
    },
    include: { subject: { select: { id: true, kind: true, name: true } } },
    orderBy: [{ dueAt: 'desc' }, { key: 'asc' }],
  })
  const names = await userNames(
    tx,
    rows.flatMap((row) => (row.closedBy ? [row.closedBy] : [])),
  )
  // What has ended since needs nothing any more.
  const living = new Set(subjectsIn(snapshot).map(({ id }) => id))
  const wanted = rows.filter(({ subject }) => living.has(subject.id))
  return wanted.map((row) => ({
    taskId: row.id,
    title: (row.content as TaskContent).title,
    subject: row.subject,
    state: row.state,
    isLate: row.state === 'open',
    dueAt: row.dueAt.toISOString(),
    reason: row.reason,
    byName: row.closedBy ? nameOf(names, row.closedBy) : null,
  }))
}

function subjectsIn(snapshot: RoomSnapshot): HandOver['signs'][number]['subject'][] {
  const { room, tanks, cultures, pairs, clutches, batches, groups } = snapshot
  const of = (kind: SubjectKind, list: readonly { id: string; name: string }[]) =>
    list.map(({ id, name }) => ({ id, kind, name }))
  return [
    ...of('room', [room]),
    ...of('tank', tanks),
    ...of('culture', cultures),
    ...of('pair', pairs),
    ...of('clutch', clutches),
    ...of('larval_batch', batches),
    ...of('juvenile_group', groups),
  ]
}

function toldIn(snapshot: RoomSnapshot, now: string) {
  const since = new Date(Date.parse(now) - toldForDays * 86_400_000).toISOString()
  return { since, subjects: new Map(subjectsIn(snapshot).map((subject) => [subject.id, subject])) }
}

function signsOf(snapshot: RoomSnapshot, now: string): HandOver['signs'] {
  const { since, subjects } = toldIn(snapshot, now)
  return snapshot.facts
    .flatMap((fact) => {
      if (fact.kind !== 'observation' || fact.at < since) return []
      const signs = fact.data.signs.filter((sign) => troubleSigns.has(sign))
      // What has ended since is nobody's worry any more.
      const subject = subjects.get(fact.subjectId)
      if (signs.length === 0 || !subject) return []
      return [
        { factId: fact.id, at: fact.at, byName: fact.recordedByName, subject, signs, note: fact.data.note ?? null },
      ]
    })
    .reverse()
}

/** The dead of each living thing, with the last time that some were found and by whom. */
function lossesOf(snapshot: RoomSnapshot, now: string): HandOver['losses'] {
  const { since, subjects } = toldIn(snapshot, now)
  const batches = new Map(snapshot.batches.map((batch) => [batch.id, batch]))
  const losses = new Map<string, HandOver['losses'][number]>()
  for (const { kind, subjectId, at, data, recordedByName } of snapshot.facts) {
    const subject = subjects.get(subjectId)
    if (kind !== 'loss' || at < since || !subject) continue
    const { number, of } = data
    const key = `${subjectId} ${of}`
    const sum = number + (losses.get(key)?.number ?? 0)
    const batch = batches.get(subjectId)
    losses.set(key, { subject, of, care: batch ? careOf(batch) : null, number: sum, at, byName: recordedByName })
  }
  return [...losses.values()].sort((a, b) => b.number - a.number)
}

function comingOf(snapshot: RoomSnapshot, now: string): HandOver['coming'] {
  const last = addDays(localDate({ timeZone: snapshot.room.timeZone, at: now }), nightsAhead)
  return snapshot.clutches
    .filter((clutch) => clutchState(snapshot, clutch) === 'incubating')
    .flatMap((clutch) =>
      clutchNights(snapshot, { clutch, at: now })
        .filter((night) => night.date < last && night.probability >= 0.05)
        .map((night) => ({
          ...{ subject: { id: clutch.id, kind: 'clutch' as const, name: clutch.name }, care: clutch.care },
          ...night,
        })),
    )
    .sort((a, b) => (a.date === b.date ? b.probability - a.probability : a.date < b.date ? -1 : 1))
}
