import type { FactDraft } from '@fryward/husbandry'
import { factDataSchemas, type Id, type Imported, type ImportLine, type ImportPreview } from '@fryward/shared'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { invalid, RoomError } from '../errors.ts'
import { type FactBatch, factBatch } from '../facts/insert-fact.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { type CountLine, readCountsFile } from './counts-file.ts'

type Asked = { ctx: Context; roomId: Id; text: string }

/** What would become of each line; the same reading and the same checks as when it is kept. */
export async function previewImport({ ctx, roomId, text }: Asked): Promise<ImportPreview> {
  return readInRoom({ ctx, roomId, permission: 'manage' }, async (read) => {
    // Nothing is flushed, so nothing is kept and nothing is said of it.
    const work: Work = { ...read, revision: 0, audit: () => {} }
    const { lines } = await judged(work, text, factBatch(work))
    return { lines, good: lines.filter(({ problem }) => problem === null).length, note: null }
  })
}

/** Keeps every line that holds, as one write that can be taken back as one; the others are told with why. */
export async function importCounts({ ctx, roomId, text }: Asked): Promise<Imported> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const batch = factBatch(work)
    const { lines, factIds } = await judged(work, text, batch)
    if (factIds.length === 0)
      throw invalid('text', 'No line of this file can be kept. Look at what is said of each and choose it again.')
    await batch.flush()
    const id = uuidv7()
    work.audit({
      action: 'counts.import',
      subjectId: roomId,
      detail: { importId: id, kept: factIds.length, leftOut: lines.length - factIds.length, factIds },
      why: 'counts of a notebook were taken in',
    })
    return { id, kept: factIds.length, lines, note: null }
  })
}

async function judged(work: Work, text: string, batch: FactBatch): Promise<{ lines: ImportLine[]; factIds: Id[] }> {
  const { tx, roomId } = work
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  const things = await tx.subject.findMany({
    where: { roomId },
    select: { id: true, kind: true, name: true },
    orderBy: { id: 'asc' },
  })
  // The newest of a name is the one that people mean.
  const file = { timeZone: room.timeZone, locale: room.locale, things: things.toReversed() }
  const lines: ImportLine[] = []
  const factIds: Id[] = []
  const read = readCountsFile(text, file)
  const seen = await countsThere(work, read)
  for (const line of read) {
    const kept = await tryLine({ line, batch, seen })
    if ('id' in kept) factIds.push(kept.id)
    const { line: number, text: written, thing, date } = line
    const problem = 'id' in kept ? null : kept.problem
    lines.push({ line: number, text: written.slice(0, 300), thing: thing?.name ?? null, date, problem })
  }
  return { lines, factIds }
}

type Trying = { line: CountLine; batch: FactBatch; seen: Set<string> }

async function tryLine({ line, batch, seen }: Trying): Promise<{ id: Id } | { problem: string }> {
  const { meant, thing } = line
  if ('problem' in meant) return meant
  if (!thing) throw new Error('A line that says what is meant names its thing.')
  const { at, data } = meant
  const key = keyOf({ subjectId: thing.id, at, data })
  if (seen.has(key))
    return { problem: 'This count is there already. Leave the line out, or write another time of day.' }
  try {
    const fact = { kind: 'count', subjectId: thing.id, data } as FactDraft
    const { id } = await batch.add({ fact, at })
    seen.add(key)
    return { id }
  } catch (error) {
    if (!(error instanceof RoomError)) throw error
    return { problem: [error.message, ...(error.fields ?? []).map(({ message }) => message)].at(-1) ?? error.message }
  }
}

/** Counts that stand already in the days of a file, as they are told apart; read once, as a file has many lines. */
async function countsThere({ tx, roomId }: Work, lines: readonly CountLine[]): Promise<Set<string>> {
  const times = lines.flatMap(({ meant }) => ('at' in meant ? [meant.at] : [])).sort()
  const [first, last] = [times[0], times.at(-1)]
  if (first === undefined || last === undefined) return new Set()
  const rows = await tx.fact.findMany({
    where: { roomId, kind: 'count', at: { gte: first, lte: last }, struckAt: null },
    select: { subjectId: true, at: true, data: true },
  })
  return new Set(
    rows.map(({ subjectId, at, data }) =>
      keyOf({ subjectId, at: at.toISOString(), data: factDataSchemas.count.parse(data) }),
    ),
  )
}

// A file says no seconds.
const minutePrecision = 'YYYY-MM-DDTHH:MM'.length

const keyOf = ({
  subjectId,
  at,
  data,
}: {
  subjectId: Id
  at: string
  data: { of: string; animals: number[] }
}): string => `${subjectId} ${at.slice(0, minutePrecision)} ${data.of} ${data.animals.join(' ')}`
