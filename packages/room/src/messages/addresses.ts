import { addDays, localDate, localTime } from '@fryward/husbandry'
import type { Id, Instant, MessageWay } from '@fryward/shared'
import type { Transaction } from '@fryward/store'
import { dutyOf } from '../duty/duty-of.ts'

/** By which way to whom; a webhook is nobody's. */
export type Address = { way: MessageWay; userId: string | null; address: string }

type Asked = { tx: Transaction; roomId: Id; isMailSetUp: boolean }

/** Every way that reaches one person. */
export async function addressesOf({ tx, roomId, isMailSetUp }: Asked, userIds: readonly string[]): Promise<Address[]> {
  const members = await tx.membership.findMany({
    where: { roomId, userId: { in: [...userIds] } },
    include: { user: { select: { email: true } }, phones: { select: { id: true }, orderBy: { id: 'asc' } } },
    orderBy: [{ joinedAt: 'asc' }, { userId: 'asc' }],
  })
  return members.flatMap(({ userId, user, phones, alarmsByMail }): Address[] => [
    ...phones.map(({ id }) => ({ way: 'push' as const, userId, address: id })),
    ...(isMailSetUp && alarmsByMail ? [{ way: 'mail' as const, userId, address: user.email }] : []),
  ])
}

export async function ownersOf({ tx, roomId }: Asked): Promise<string[]> {
  const owners = await tx.membership.findMany({ where: { roomId, role: 'owner' }, select: { userId: true } })
  return owners.map(({ userId }) => userId)
}

/** Where the room's alarms are posted to, beside everybody. */
export async function webhookOf({ tx, roomId }: Asked): Promise<Address[]> {
  const webhook = await tx.webhook.findUnique({ where: { roomId } })
  return webhook ? [{ way: 'webhook', userId: null, address: webhook.url }] : []
}

/**
 * Who has the room at a moment. A night belongs to the day before it: before the lights go on, whoever had the room
 * then still has it where nobody has taken the new day.
 */
export async function holderOf({ tx, roomId }: Asked, now: Instant): Promise<string | null> {
  const room = await tx.room.findUniqueOrThrow({
    where: { id: roomId },
    select: { timeZone: true, lightsOnAt: true },
  })
  const today = localDate({ timeZone: room.timeZone, at: now })
  const onDuty = await dutyOf(tx, { roomId, date: today })
  if (onDuty) return onDuty.userId
  if (localTime({ timeZone: room.timeZone, at: now }) >= room.lightsOnAt) return null
  return (await dutyOf(tx, { roomId, date: addDays(today, -1) }))?.userId ?? null
}
