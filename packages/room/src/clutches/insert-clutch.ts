import { dayMonth, localDate } from '@fryward/husbandry'
import type { Id, NewClutch } from '@fryward/shared'
import { invalid } from '../errors.ts'
import { assertNotInFuture, insertFact } from '../facts/insert-fact.ts'
import { insertSubject } from '../frame/subject-row.ts'
import type { Work } from '../frame/write-in-room.ts'

/** A clutch with the spawning it stands on; strike out the spawning and the clutch is void. */
export async function insertClutch(
  work: Work,
  { input, signOffId }: { input: NewClutch; signOffId?: Id },
): Promise<Id> {
  assertNotInFuture(work, input.spawnedAt, 'spawnedAt')
  const pair = await work.tx.pair.findUnique({
    where: { roomId_id: { roomId: work.roomId, id: input.pairId } },
    include: { subject: true },
  })
  if (!pair) throw invalid('pairId', 'There is no such pair in this room.', input.pairId)
  const room = await work.tx.room.findUniqueOrThrow({ where: { id: work.roomId } })
  const name =
    input.name ??
    (await freeName(
      work,
      `${pair.subject.name}, ${dayMonth(localDate({ timeZone: room.timeZone, at: input.spawnedAt }))}`,
    ))
  const id = await insertSubject(work, { kind: 'clutch', name })
  await work.tx.clutch.create({
    data: { roomId: work.roomId, id, pairId: input.pairId, intent: input.intent, spawnedAt: input.spawnedAt },
  })
  await insertFact(work, {
    fact: { kind: 'spawning', subjectId: id, data: { eggs: input.eggs } },
    at: input.spawnedAt,
    signOffId,
  })
  work.audit({
    action: 'clutch.create',
    subjectId: id,
    detail: { name, pairId: input.pairId, spawnedAt: input.spawnedAt, eggs: input.eggs ?? null },
    why: 'eggs were laid',
  })
  return id
}

// As long as a name may be, less the letter that tells two apart.
const longestBase = 78

/** Keeps the date at the end, and never half of a character pair. */
function shortened(name: string): string {
  const comma = name.lastIndexOf(', ')
  const date = comma < 0 ? '' : name.slice(comma).slice(0, 20)
  const start = name.slice(0, longestBase - date.length).replace(/[\ud800-\udbff]$/, '')
  return `${start.trim()}${date}`
}

/** A second clutch of one day (or one entered again after a mistake) takes the next letter. */
export async function freeName(work: Work, wanted: string): Promise<string> {
  const base = wanted.length > longestBase ? shortened(wanted) : wanted
  const taken = new Set(
    (
      await work.tx.subject.findMany({
        where: { roomId: work.roomId, name: { startsWith: base, mode: 'insensitive' } },
        select: { name: true },
      })
    ).map((subject) => subject.name.toLowerCase()),
  )
  const names = [base, ...'bcdefghijklmnopqrstuvwxyz'.split('').map((letter) => `${base} ${letter}`)]
  const free = names.find((name) => !taken.has(name.toLowerCase()))
  if (free === undefined)
    throw invalid('name', `Every name that begins with "${base}" is taken; give it one of its own.`)
  return free
}
