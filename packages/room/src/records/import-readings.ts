import { keepByHand, readMoments } from '@fryward/readings'
import type { Id, Imported, ImportLine, ImportPreview } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { invalid, notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { writeInRoom } from '../frame/write-in-room.ts'
import { type NotedGauge, note } from '../readings/note.ts'
import { unbelieved } from '../readings/unbelieved.ts'
import { worthCounting } from '../readings/worth-counting.ts'
import type { Noted } from '../readings/worth-noting.ts'
import { readReadingsFile } from './readings-file.ts'

type Asked = { ctx: Context; roomId: Id; gaugeId: Id; text: string }
type Scope = { tx: Transaction; ctx: Context; roomId: Id }

/** What would become of each line of a file of a gauge's readings; nothing is kept. */
export async function previewReadings({ ctx, roomId, gaugeId, text }: Asked): Promise<ImportPreview> {
  return readInRoom({ ctx, roomId, permission: 'manage' }, async (read) => {
    const { lines, good, note: said } = await judged(read, { gaugeId, text })
    return { lines, good: good.length, note: said }
  })
}

/**
 * Keeps every line that holds, as one write that can be taken back as one. What a file says is kept as it stands there; the
 * latest of it is noted as what a device posts is, where it can be believed.
 */
export async function importReadings({ ctx, roomId, gaugeId, text }: Asked): Promise<Imported> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, async (work) => {
    const { lines, good, gauge, noted, note: said } = await judged(work, { gaugeId, text })
    if (good.length === 0)
      throw invalid('text', 'No line of this file can be kept. Look at what is said of each and choose it again.')
    await keepByHand(
      (statement, json) => work.tx.$executeRawUnsafe(statement, json),
      good.map((reading) => ({ channel: gauge.channel, ...reading })),
    )
    const id = uuidv7()
    const factIds = await note(work, gauge, noted)
    work.audit({
      action: 'readings.import',
      subjectId: gauge.subjectId,
      detail: {
        ...{ importId: id, gaugeId, kept: good.length, leftOut: lines.length - good.length, factIds },
        notedBefore: { until: gauge.notedUntil?.toISOString() ?? null, value: gauge.notedValue },
        notedUntil: factIds.length > 0 ? new Date(noted.at(-1)?.to ?? 0).toISOString() : null,
        at: good.map(({ at }) => at),
      },
      why: 'readings of a file were taken in',
    })
    return { id, kept: good.length, lines, note: said }
  })
}

type Judged = {
  lines: ImportLine[]
  good: { at: number; value: number }[]
  gauge: NotedGauge & { channel: number }
  noted: Noted[]
  /** What tasks and forecasts make of them. */
  note: string | null
}

const withAlarms = { subject: true, alarms: { where: { clearedAt: null }, select: { kind: true } } } as const

async function judged({ tx, ctx, roomId }: Scope, { gaugeId, text }: { gaugeId: Id; text: string }): Promise<Judged> {
  const gauge = await tx.gauge.findUnique({ where: { roomId_id: { roomId, id: gaugeId } }, include: withAlarms })
  if (!gauge) throw notFound('gauge')
  const { timeZone, locale } = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  const read = readReadingsFile(text, { timeZone, locale, quantity: gauge.quantity, nowMs: Date.parse(ctx.now) })
  const at = read.flatMap(({ meant }) => ('at' in meant ? [meant.at] : []))
  const taken = await readMoments(ctx.database.pool, { channel: gauge.channel, at })
  const good: Judged['good'] = []
  const lines = read.map(({ line, text: written, date, meant }) => {
    const problem = 'problem' in meant ? meant.problem : taken.has(meant.at) ? alreadyThere : null
    if ('at' in meant && problem === null) {
      good.push(meant)
      taken.add(meant.at)
    }
    return { line, text: written.slice(0, 300), thing: gauge.key, date, problem }
  })
  const { noted, why } = worthCounting(
    {
      ...gauge,
      notedUntil: gauge.notedUntil?.getTime() ?? null,
      isInVessel: gauge.endedAt === null && ['tank', 'culture'].includes(gauge.subject.kind),
      // That nothing was heard of it is what a file makes good.
      isDisbelieved: gauge.alarms.some(({ kind }) => kind !== 'silent' && unbelieved.some((one) => one === kind)),
    },
    good,
    Date.parse(ctx.now),
  )
  return { lines, good, gauge, noted, note: good.length === 0 ? null : why }
}

const alreadyThere = 'A reading of this moment is there already, here or further up in the file.'
