import type { Id, Pair, PairSex, SameFish } from '@fryward/shared'
import { fromDateColumn, type Prisma, type Transaction } from '@fryward/store'
import { notFound } from '../errors.ts'

export const pairIncludes = { subject: true, descent: true } as const

export function toPair({
  subject,
  roomId: _roomId,
  formedOn,
  descent,
  ...pair
}: Prisma.PairGetPayload<{ include: typeof pairIncludes }>): Pair {
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

export async function getPairInRoom({ tx, roomId }: { tx: Transaction; roomId: Id }, pairId: Id): Promise<Pair> {
  const row = await tx.pair.findUnique({ where: { roomId_id: { roomId, id: pairId } }, include: pairIncludes })
  if (!row) throw notFound('pair')
  return toPair(row)
}
