import type { Id, Instant, Mark } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import type { Context } from '../context.ts'
import { invalid, notFound } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'

// More lines than a chart has room for; the newest of them.
const mostMarks = 500
const factKinds = ['hatch', 'water_change', 'harvest'] as const

type Asked = { roomId: Id; subjectId: Id; from: Instant; to: Instant }
type Scope = Asked & { tx: Transaction }

/** What happened in a vessel in a span of time that a gauge in it may show, oldest first. */
export async function listMarks({
  ctx,
  query: { from, to },
  ...of
}: {
  ctx: Context
  roomId: Id
  subjectId: Id
  query: { from: Instant; to: Instant }
}): Promise<Mark[]> {
  if (Date.parse(from) >= Date.parse(to)) throw invalid('to', 'The end comes after the beginning.', to)
  return readInRoom({ ctx, roomId: of.roomId }, async ({ tx }) => {
    const asked = { tx, ...of, from, to }
    const { roomId, subjectId } = of
    const subject = await tx.subject.findUnique({ where: { roomId_id: { roomId, id: subjectId } } })
    if (!subject) throw notFound('thing')
    const marks = [...(await factMarks(asked)), ...(await alarmMarks(asked))]
    return marks.toSorted((one, other) => one.at.localeCompare(other.at))
  })
}

async function factMarks({ tx, roomId, subjectId, from, to }: Scope): Promise<Mark[]> {
  const rows = await tx.fact.findMany({
    where: {
      ...{ roomId, kind: { in: [...factKinds] }, at: { gte: from, lte: to }, struckAt: null },
      // What is only topped up was not changed.
      NOT: { kind: 'water_change', data: { path: ['removedL'], equals: 0 } },
      subjectId: { in: [subjectId, ...(await broodsIn({ tx, roomId, subjectId }))] },
    },
    include: { subject: true },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: mostMarks,
  })
  return rows.flatMap(({ kind, at, subject: { id, kind: subjectKind, name } }) => {
    const known = factKinds.find((one) => one === kind)
    return known ? { kind: known, at: at.toISOString(), subject: { id, kind: subjectKind, name }, alarm: null } : []
  })
}

/** Eggs of the pairs that live in a tank, larvae that it holds, and the eggs that those came from; as it stands today. */
async function broodsIn({ tx, roomId, subjectId }: Pick<Scope, 'tx' | 'roomId' | 'subjectId'>): Promise<Id[]> {
  const batches = await tx.larvalBatch.findMany({ where: { roomId, tankId: subjectId }, include: { clutches: true } })
  const clutches = await tx.clutch.findMany({ where: { roomId, pair: { tankId: subjectId } }, select: { id: true } })
  return [
    ...batches.flatMap(({ id, clutches: from }) => [id, ...from.map(({ clutchId }) => clutchId)]),
    ...clutches.map(({ id }) => id),
  ]
}

async function alarmMarks({ tx, roomId, subjectId, from, to }: Scope): Promise<Mark[]> {
  const rows = await tx.alarm.findMany({
    where: { roomId, gauge: { subjectId }, raisedAt: { gte: from, lte: to } },
    include: { gauge: { include: { subject: true } } },
    orderBy: [{ raisedAt: 'desc' }, { id: 'desc' }],
    take: mostMarks,
  })
  return rows.map(({ kind, raisedAt, gauge: { id: gaugeId, subject } }) => ({
    kind: 'alarm',
    at: raisedAt.toISOString(),
    subject: { id: subject.id, kind: subject.kind, name: subject.name },
    alarm: { kind, gaugeId },
  }))
}
