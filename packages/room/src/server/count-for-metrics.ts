import type { AlarmKind, MessageState, MessageWay } from '@fryward/shared'
import type { Context } from '../context.ts'

// Numbers alone, of all rooms and of none by name, for whoever runs the server.
type Asked = Pick<Context, 'database'>

const dayMs = 86_400_000

export async function countStandingAlarms({ database }: Asked): Promise<{ kind: AlarmKind; number: number }[]> {
  const rows = await database.prisma.alarm.groupBy({ by: ['kind'], where: { clearedAt: null }, _count: true })
  return rows.map(({ kind, _count }) => ({ kind, number: _count }))
}

type MessageCount = { way: MessageWay; state: MessageState; number: number }

export async function countMessagesOfADay({ database }: Asked, now = Date.now()): Promise<MessageCount[]> {
  const rows = await database.prisma.message.groupBy({
    by: ['way', 'state'],
    where: { createdAt: { gt: new Date(now - dayMs) } },
    _count: true,
  })
  return rows.map(({ way, state, _count }) => ({ way, state, number: _count }))
}
