import { localDate } from '@fryward/husbandry'
import { type PedigreeEntry, type Relationships, relationships } from '@fryward/lineage'
import type { Id, PairSex, PlainDate } from '@fryward/shared'
import { fromDateColumn, type Transaction } from '@fryward/store'

/** A clutch as descent sees it: who laid it. */
export type FamilyClutch = { id: Id; name: string; pairId: Id; species: string; laidOn: PlainDate }
export type FamilyPair = {
  id: Id
  name: string
  species: string
  formedOn: PlainDate | null
  isLiving: boolean
  from: Record<PairSex, Id | null>
}
export type Family = { pairs: FamilyPair[]; clutches: ReadonlyMap<Id, FamilyClutch> }

/** Every pair of a room and every clutch that was laid in it, ended ones too. */
export async function readFamily(tx: Transaction, roomId: Id): Promise<Family> {
  const { timeZone } = await tx.room.findUniqueOrThrow({ where: { id: roomId }, select: { timeZone: true } })
  const pairs = await tx.pair.findMany({
    where: { roomId },
    include: { subject: true, descent: true },
    orderBy: { id: 'asc' },
  })
  const clutches = await tx.clutch.findMany({ where: { roomId }, include: { subject: true, pair: true } })
  return {
    pairs: pairs.map(({ id, species, formedOn, subject, descent }) => ({
      ...{ id, species },
      name: subject.name,
      formedOn: formedOn ? fromDateColumn(formedOn) : null,
      isLiving: subject.endedAt === null,
      from: {
        female: descent.find(({ sex }) => sex === 'female')?.clutchId ?? null,
        male: descent.find(({ sex }) => sex === 'male')?.clutchId ?? null,
      },
    })),
    clutches: new Map(
      clutches.map(({ id, pairId, spawnedAt, subject, pair }) => {
        const laidOn = localDate({ timeZone, at: spawnedAt.toISOString() })
        return [id, { id, name: subject.name, pairId, species: pair.species, laidOn }]
      }),
    ),
  }
}

export const fishId = (pairId: Id, sex: PairSex): string => `${pairId} ${sex}`

/** Both fish of the pair that laid a clutch; a clutch that is not known says nothing of its parents. */
export function parentsIn({ clutches }: Family, clutchId: Id | null): Pick<PedigreeEntry, 'sireId' | 'damId'> {
  const clutch = clutchId === null ? undefined : clutches.get(clutchId)
  if (!clutch) return { sireId: null, damId: null }
  return { sireId: fishId(clutch.pairId, 'male'), damId: fishId(clutch.pairId, 'female') }
}

/** The fish of all pairs with their parents, as the lineage package reads them. */
export const pedigreeOf = (family: Family): PedigreeEntry[] =>
  family.pairs.flatMap(({ id, from }) => [
    { id: fishId(id, 'female'), ...parentsIn(family, from.female) },
    { id: fishId(id, 'male'), ...parentsIn(family, from.male) },
  ])

/**
 * Who is related to whom, with some fish more that are not there yet.
 * @throws PedigreeError when a fish would be its own ancestor.
 */
export const relationshipsIn = (family: Family, more: readonly PedigreeEntry[] = []): Relationships =>
  relationships([...pedigreeOf(family), ...more])
