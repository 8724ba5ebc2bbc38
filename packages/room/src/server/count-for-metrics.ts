import type { AlarmKind, MessageState, MessageWay } from '@fryward/shared'
import type { Context } from '../context.ts'

export type Counted = {
  alarms: { kind: AlarmKind; number: number }[]
  messages: { way: MessageWay; state: MessageState; number: number }[]
}

const dayMs = 86_400_000

/** What of all rooms somebody watches who runs the server: numbers alone, of no room by name. */
export async function countForMetrics({ database }: Pick<Context, 'database'>, now = Date.now()): Promise<Counted> {
  const alarms = await database.prisma.alarm.groupBy({ by: ['kind'], where: { clearedAt: null }, _count: true })
  const messages = await database.prisma.message.groupBy({
    by: ['way', 'state'],
    where: { createdAt: { gt: new Date(now - dayMs) } },
    _count: true,
  })
  return {
    alarms: alarms.map(({ kind, _count }) => ({ kind, number: _count })),
    messages: messages.map(({ way, state, _count }) => ({ way, state, number: _count })),
  }
}
