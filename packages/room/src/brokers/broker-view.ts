import type { Broker, Id } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import type { Context } from '../context.ts'

// Whoever is connected says so each minute; when that stops, nobody is.
const connectedForMs = 3 * 60_000
export const refusalsKeptMs = 7 * 86_400_000
const mostRefusals = 30

/** Everything of a room's broker but its password. */
export async function viewBroker({ tx, ctx, roomId }: { tx: Transaction; ctx: Context; roomId: Id }): Promise<Broker> {
  const nowMs = Date.parse(ctx.now)
  const row = await tx.broker.findUnique({ where: { roomId } })
  const password = await tx.brokerPassword.findUnique({ where: { roomId }, select: { roomId: true } })
  const refusals = await tx.brokerRefusal.findMany({
    where: { roomId, lastAt: { gt: new Date(nowMs - refusalsKeptMs) } },
    select: { topic: true, reason: true, detail: true, number: true, lastAt: true },
    orderBy: [{ lastAt: 'desc' }, { topic: 'asc' }, { reason: 'asc' }],
    take: mostRefusals,
  })
  const heardMs = row?.lastConnectedAt?.getTime() ?? 0
  return {
    url: row?.url ?? null,
    username: row?.username ?? null,
    authority: row?.authority ?? null,
    hasPassword: password !== null,
    isConnected: (row?.isConnected ?? false) && nowMs - heardMs < connectedForMs,
    lastConnectedAt: row?.lastConnectedAt?.toISOString() ?? null,
    trouble: row?.trouble ?? null,
    troubleAt: row?.troubleAt?.toISOString() ?? null,
    refusals: refusals.map(({ lastAt, ...refusal }) => ({ ...refusal, lastAt: lastAt.toISOString() })),
  }
}
