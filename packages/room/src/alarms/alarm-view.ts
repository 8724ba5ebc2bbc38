import { type Alarm, type Id, unitOfGauge } from '@fryward/shared'
import type { Prisma, Transaction } from '@fryward/store'
import { notFound, RoomError } from '../errors.ts'
import { nameOf, userNames } from '../people/user-names.ts'

const withGauge = { gauge: { include: { subject: true } } } as const
type AlarmRow = Prisma.AlarmGetPayload<{ include: typeof withGauge }>
type Scope = { tx: Transaction; roomId: Id }

// As many as a page shows of what is over.
const mostShown = 100

/** Standing ones first, then newest first. */
export async function viewAlarms({ tx, roomId }: Scope, which: { id?: Id } = {}): Promise<Alarm[]> {
  const rows = await tx.alarm.findMany({
    where: { roomId, ...which },
    include: withGauge,
    orderBy: [{ clearedAt: { sort: 'desc', nulls: 'first' } }, { raisedAt: 'desc' }, { id: 'desc' }],
    take: mostShown,
  })
  const names = await userNames(
    tx,
    rows.flatMap(({ acknowledgedBy, handedTo }) => [acknowledgedBy, handedTo].flatMap((userId) => userId ?? [])),
  )
  return rows.map((row) => toAlarm(row, names))
}

export async function viewAlarm(scope: Scope, id: Id): Promise<Alarm> {
  const [alarm] = await viewAlarms(scope, { id })
  if (!alarm) throw notFound('alarm')
  return alarm
}

/** @throws RoomError where the alarm is over. */
export async function standingAlarm(scope: Scope, id: Id): Promise<Alarm> {
  const alarm = await viewAlarm(scope, id)
  if (alarm.clearedAt) throw new RoomError('wrong_state', 'This alarm is over already.', { current: alarm })
  return alarm
}

const toAlarm = ({ gauge, ...row }: AlarmRow, names: ReadonlyMap<string, string>): Alarm => ({
  id: row.id,
  gauge: {
    id: gauge.id,
    key: gauge.key,
    quantity: gauge.quantity,
    unit: unitOfGauge[gauge.quantity],
    low: gauge.low,
    high: gauge.high,
  },
  subject: { id: gauge.subject.id, kind: gauge.subject.kind, name: gauge.subject.name },
  kind: row.kind,
  raisedAt: row.raisedAt.toISOString(),
  value: row.value,
  acknowledgedAt: row.acknowledgedAt?.toISOString() ?? null,
  acknowledgedByName: row.acknowledgedBy === null ? null : nameOf(names, row.acknowledgedBy),
  quietUntil: row.quietUntil?.toISOString() ?? null,
  handedToName: row.handedTo === null ? null : nameOf(names, row.handedTo),
  clearedAt: row.clearedAt?.toISOString() ?? null,
})
