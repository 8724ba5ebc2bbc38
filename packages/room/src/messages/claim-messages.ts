import type { Alarm, Id, Message, Room } from '@fryward/shared'
import type { Prisma } from '@fryward/store'
import { viewAlarms } from '../alarms/alarm-view.ts'
import type { Context } from '../context.ts'
import { nameOf, userNames } from '../people/user-names.ts'

/** A message that this process alone is to hand over now. */
export type Outgoing = Pick<Message, 'id' | 'occasion' | 'ordinal'> & {
  roomId: Id
  room: Pick<Room, 'name' | 'units' | 'locale' | 'timeZone'>
  alarm: Alarm | null
  /** Whom it is for; none of a webhook. */
  personName: string | null
  to:
    | { way: 'mail'; mail: string }
    | { way: 'push'; endpoint: string; p256dh: string; auth: string }
    | { way: 'webhook'; url: string; webhookId: Id }
}

// A message takes seconds to hand over: whoever claimed it longer ago has died over it.
const claimHoldsMs = 3 * 60_000
const mostAtOnce = 50

/**
 * Takes messages that are due, so that no other process sends them, and says of those that somebody took and never ended that
 * nobody knows what became of them. What is no longer so is withdrawn instead.
 */
export async function claimMessages(ctx: Context): Promise<Outgoing[]> {
  const { prisma } = ctx.database
  const lostBefore = new Date(Date.parse(ctx.now) - claimHoldsMs)
  await prisma.message.updateMany({
    where: { state: 'claimed', claimedAt: { lt: lostBefore } },
    data: { state: 'unknown', endedAt: ctx.now, detail: 'The server stopped while it was being sent.' },
  })
  await withdrawStale(ctx)
  const claimed = await prisma.$queryRaw<{ id: Id }[]>`
    UPDATE message SET state = 'claimed', claimed_at = ${ctx.now}::timestamptz, tries = tries + 1
    WHERE (room_id, id) IN (
      SELECT room_id, id FROM message WHERE state = 'waiting' AND due_at <= ${ctx.now}::timestamptz
      ORDER BY due_at, id LIMIT ${mostAtOnce} FOR UPDATE SKIP LOCKED)
    RETURNING id`
  if (claimed.length === 0) return []
  const rows = await prisma.message.findMany({
    where: { id: { in: claimed.map(({ id }) => id) } },
    include: { room: { include: { webhook: true } } },
    orderBy: { id: 'asc' },
  })
  const outgoing: Outgoing[] = []
  for (const row of rows) {
    const to = await placeOf(ctx, row)
    if (to) outgoing.push(await toOutgoing(ctx, row, to))
  }
  return outgoing
}

const withRoom = { room: { include: { webhook: true } } } as const
type Row = Prisma.MessageGetPayload<{ include: typeof withRoom }>

/** Somebody has it, it is over, it is to be quiet, or it has been said anew since. */
async function withdrawStale({ database, now }: Context): Promise<void> {
  await database.prisma.$executeRaw`
    UPDATE message SET state = 'withdrawn', ended_at = ${now}::timestamptz, detail = 'It was no longer so.'
    FROM alarm WHERE alarm.room_id = message.room_id AND alarm.id = message.alarm_id
      AND message.state = 'waiting' AND message.occasion = 'raised'
      AND (alarm.acknowledged_at IS NOT NULL OR alarm.cleared_at IS NOT NULL OR alarm.quiet_until > ${now}::timestamptz
        OR EXISTS (SELECT FROM message AS later WHERE later.room_id = message.room_id AND later.alarm_id = message.alarm_id
          AND later.occasion = 'raised' AND later.way = message.way AND later.address = message.address
          AND later.ordinal > message.ordinal))`
}

/** Where a message goes as things stand now; one whose address was taken off, or whose person has left, is withdrawn. */
async function placeOf(ctx: Context, row: Row): Promise<Outgoing['to'] | null> {
  const place = await lookUpPlace(ctx, row)
  if (place) return place
  await ctx.database.prisma.message.updateMany({
    where: { roomId: row.roomId, id: row.id, state: 'claimed' },
    data: { state: 'withdrawn', endedAt: ctx.now, detail: 'This address was taken off.' },
  })
  return null
}

async function lookUpPlace(
  { database: { prisma } }: Context,
  { roomId, way, address, userId, room: { webhook } }: Row,
): Promise<Outgoing['to'] | null> {
  if (way === 'webhook') return webhook?.url === address ? { way, url: address, webhookId: webhook.id } : null
  if (way === 'mail') {
    const isMember = userId !== null && (await prisma.membership.count({ where: { roomId, userId } })) > 0
    return isMember ? { way, mail: address } : null
  }
  const phone = await prisma.pushPhone.findUnique({ where: { roomId_id: { roomId, id: address } } })
  return phone && { way, endpoint: phone.endpoint, p256dh: phone.p256dh, auth: phone.auth }
}

async function toOutgoing(ctx: Context, row: Row, to: Outgoing['to']): Promise<Outgoing> {
  const { roomId, alarmId, userId, room } = row
  const tx = ctx.database.prisma
  const [alarm] = alarmId === null ? [] : await viewAlarms({ tx, roomId }, { id: alarmId })
  return {
    ...{ roomId, id: row.id, occasion: row.occasion, ordinal: row.ordinal, to },
    room: { name: room.name, units: room.units, locale: room.locale as Room['locale'], timeZone: room.timeZone },
    alarm: alarm ?? null,
    personName: userId === null ? null : nameOf(await userNames(tx, [userId]), userId),
  }
}
