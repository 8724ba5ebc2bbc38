import { husbandryDay, lacksForEggs, localDate } from '@fryward/husbandry'
import type { EggLookLack, Id, Pair, PairSex, SameFish } from '@fryward/shared'
import { fromDateColumn, type Prisma, type Transaction } from '@fryward/store'
import { notFound } from '../errors.ts'
import type { Scope } from '../frame/read-in-room.ts'

const pairIncludes = { subject: true, descent: true } as const

/** A pair as it was written down; the rest is worked out. */
type KeptPair = Omit<Pair, 'eggLookLacks'>

function toKept({
  subject,
  roomId: _roomId,
  formedOn,
  descent,
  ...pair
}: Prisma.PairGetPayload<{ include: typeof pairIncludes }>): KeptPair {
  const originOf = (sex: PairSex) => descent.find((each) => each.sex === sex)
  const sameAs = (sex: PairSex): SameFish | null => {
    const { samePairId, sameSex } = originOf(sex) ?? {}
    return samePairId && sameSex ? { pairId: samePairId, sex: sameSex } : null
  }
  return {
    ...pair,
    femaleFromClutchId: originOf('female')?.clutchId ?? null,
    maleFromClutchId: originOf('male')?.clutchId ?? null,
    femaleSameAs: sameAs('female'),
    maleSameAs: sameAs('male'),
    name: subject.name,
    note: subject.note,
    formedOn: formedOn ? fromDateColumn(formedOn) : null,
    endedAt: subject.endedAt?.toISOString() ?? null,
    version: subject.version,
  }
}

export async function getKeptPair({ tx, roomId }: { tx: Transaction; roomId: Id }, pairId: Id): Promise<KeptPair> {
  const row = await tx.pair.findUnique({ where: { roomId_id: { roomId, id: pairId } }, include: pairIncludes })
  if (!row) throw notFound('pair')
  return toKept(row)
}

export async function getPairInRoom(scope: Scope, pairId: Id): Promise<Pair> {
  const lacksOf = await readLacks(scope)
  return withLacks(await getKeptPair(scope, pairId), lacksOf)
}

export async function listPairsInRoom(scope: Scope): Promise<Pair[]> {
  const { roomId, tx } = scope
  const lacksOf = await readLacks(scope)
  const rows = await tx.pair.findMany({ where: { roomId }, include: pairIncludes, orderBy: { id: 'asc' } })
  return rows.map((row) => withLacks(toKept(row), lacksOf))
}

type LacksOf = (pairId: Id) => EggLookLack[]

const withLacks = (pair: KeptPair, lacksOf: LacksOf): Pair => ({ ...pair, eggLookLacks: lacksOf(pair.id) })

/** What keeps today's list from looking for the eggs of a pair; a pair that has ended is no part of the room. */
async function readLacks({ state, ctx }: Scope): Promise<LacksOf> {
  const { snapshot } = await state()
  const { room } = snapshot
  const today = husbandryDay({ room, date: localDate({ timeZone: room.timeZone, at: ctx.now }) })
  return (pairId) => {
    const pair = snapshot.pairs.find(({ id }) => id === pairId)
    return pair ? lacksForEggs(snapshot, pair, today) : []
  }
}
