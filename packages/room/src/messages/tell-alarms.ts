import type { Id } from '@fryward/shared'
import { lockWord, type Prisma, type Transaction } from '@fryward/store'
import { uuidv7 } from 'uuidv7'
import type { Context } from '../context.ts'
import { transact } from '../frame/transact.ts'
import { type Address, addressesOf, holderOf, ownersOf, webhookOf } from './addresses.ts'
import { areOwnersTold, isTimeToTell, type Telling } from './when-to-tell.ts'

const withMessages = { messages: { orderBy: { ordinal: 'desc' } } } as const
type AlarmRow = Prisma.AlarmGetPayload<{ include: typeof withMessages }>
type Work = { tx: Transaction; ctx: Context; roomId: Id; isMailSetUp: boolean }

// An alarm that ended longer ago is no news.
const overNewsMs = 24 * 3_600_000

/**
 * Writes down what is to be said of alarms, and to whom: to whoever has the room (or was handed the alarm), again until
 * somebody has it, then to the owners too; and that it is over to everybody who was told. Sending is another step: what
 * stands here is sent, or says why not. Any number of processes may do so at once.
 * @returns how many messages were written.
 */
export async function tellAlarms(ctx: Context, { isMailSetUp }: { isMailSetUp: boolean }): Promise<number> {
  const concerned = await ctx.database.prisma.alarm.findMany({
    where: concernedBy(ctx),
    select: { roomId: true },
    distinct: ['roomId'],
  })
  let written = 0
  for (const { roomId } of concerned)
    written += await transact(ctx, (tx) => tellInRoom({ tx, ctx, roomId, isMailSetUp }))
  return written
}

function concernedBy({ now }: Context): Prisma.AlarmWhereInput {
  const untold = {
    clearedAt: { gt: new Date(Date.parse(now) - overNewsMs) },
    messages: { some: { occasion: 'raised' as const }, none: { occasion: 'over' as const } },
  }
  return { OR: [{ clearedAt: null, acknowledgedAt: null }, untold] }
}

async function tellInRoom(work: Work): Promise<number> {
  const { tx, ctx, roomId } = work
  // One at a time: whoever comes second sees what the first wrote.
  await lockWord(tx, `messages of ${roomId}`)
  const alarms = await tx.alarm.findMany({
    where: { roomId, ...concernedBy(ctx) },
    include: withMessages,
    orderBy: [{ raisedAt: 'asc' }, { id: 'asc' }],
  })
  let written = 0
  for (const alarm of alarms)
    written += alarm.clearedAt === null ? await tellRaised(work, alarm) : await tellOver(work, alarm)
  return written
}

async function tellRaised(work: Work, alarm: AlarmRow): Promise<number> {
  const now = Date.parse(work.ctx.now)
  const telling = { ...tellingOf(alarm), isHandedUntold: await isHandedUntold(work, alarm) }
  if (!isTimeToTell(telling, now)) return 0
  const addresses = await addressesFor(work, alarm, areOwnersTold(telling, now))
  const ordinal = alarm.messages.length === 0 ? 0 : alarm.messages[0]!.ordinal + 1
  return write(work, { alarmId: alarm.id, occasion: 'raised', ordinal, addresses })
}

/** Whom nothing reaches would be told each minute, and never be. */
async function isHandedUntold(work: Work, { handedTo, messages }: AlarmRow): Promise<boolean> {
  if (handedTo === null || messages.some(({ userId }) => userId === handedTo)) return false
  return (await addressesOf(work, [handedTo])).length > 0
}

function tellingOf({ messages, ...alarm }: AlarmRow): Omit<Telling, 'isHandedUntold'> {
  const last = messages.filter(({ ordinal }) => ordinal === messages[0]?.ordinal)
  const people = last.filter(({ userId }) => userId !== null)
  const concerned = people.length > 0 ? people : last
  return {
    raisedAt: alarm.raisedAt.getTime(),
    isAcknowledged: alarm.acknowledgedAt !== null,
    quietUntil: alarm.quietUntil?.getTime() ?? null,
    lastAt: last[0]?.createdAt.getTime() ?? null,
    isUnreached: last.length > 0 && concerned.every(({ state }) => state === 'failed' || state === 'unknown'),
  }
}

async function addressesFor(work: Work, { handedTo }: AlarmRow, withOwners: boolean): Promise<Address[]> {
  const holder = handedTo ?? (await holderOf(work, work.ctx.now))
  const held = holder === null ? [] : await addressesOf(work, [holder])
  // Nobody has the room, or nothing reaches whoever has it.
  const others = withOwners || held.length === 0 ? await addressesOf(work, await ownersOf(work)) : []
  return [...held, ...others.filter(({ userId }) => userId !== holder), ...(await webhookOf(work))]
}

/** Where it was said, or may have been. */
async function tellOver(work: Work, { id, messages }: AlarmRow): Promise<number> {
  const reached = messages.filter(({ state }) => state === 'sent' || state === 'unknown')
  const unique = new Map(reached.map((message) => [`${message.way} ${message.address}`, message]))
  return write(work, { alarmId: id, occasion: 'over', ordinal: 0, addresses: [...unique.values()] })
}

type Written = { alarmId: Id | null; occasion: 'raised' | 'over' | 'trial'; ordinal: number; addresses: Address[] }

/** @returns how many messages were written. */
export async function write(
  { tx, ctx, roomId }: Pick<Work, 'tx' | 'ctx' | 'roomId'>,
  { addresses, ...said }: Written,
): Promise<number> {
  const { count } = await tx.message.createMany({
    data: addresses.map(({ way, userId, address }) => ({
      ...{ roomId, id: uuidv7(), ...said, way, userId, address },
      ...{ createdAt: ctx.now, dueAt: ctx.now },
    })),
    skipDuplicates: true,
  })
  return count
}
