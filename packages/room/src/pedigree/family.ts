import { localDate } from '@fryward/husbandry'
import { type PedigreeEntry, PedigreeError, type Relationships, relationships } from '@fryward/lineage'
import { type Id, type PairSex, type PlainDate, pairSexes, type SameFish } from '@fryward/shared'
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
  /** The fish of another pair that each is. */
  same: Record<PairSex, SameFish | null>
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
  const clutches = await tx.clutch.findMany({
    where: { roomId },
    include: { subject: true, pair: true },
    orderBy: { id: 'asc' },
  })
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
      same: { female: sameOf(descent, 'female'), male: sameOf(descent, 'male') },
    })),
    clutches: new Map(
      clutches.map(({ id, pairId, spawnedAt, subject, pair }) => {
        const laidOn = localDate({ timeZone, at: spawnedAt.toISOString() })
        return [id, { id, name: subject.name, pairId, species: pair.species, laidOn }]
      }),
    ),
  }
}

type DescentRow = { sex: PairSex; samePairId: Id | null; sameSex: PairSex | null }

function sameOf(descent: readonly DescentRow[], sex: PairSex): SameFish | null {
  const { samePairId, sameSex } = descent.find((each) => each.sex === sex) ?? {}
  return samePairId && sameSex ? { pairId: samePairId, sex: sameSex } : null
}

/** One fish by the pair and the part in which it was first written down. */
export type Fish = { pair: FamilyPair; sex: PairSex }

/** The fish of a pair, found where it was first written down: in however many pairs it spawns, it is one. */
export function fishIn({ pairs }: Pick<Family, 'pairs'>, pairId: Id, sex: PairSex): Fish {
  const seen = new Set<string>()
  let at: SameFish = { pairId, sex }
  for (;;) {
    const pair = pairs.find(({ id }) => id === at.pairId)
    if (!pair) throw new Error(`There is no pair ${at.pairId} in this family`)
    const before = pair.same[at.sex]
    const fish = { pair, sex: at.sex }
    if (!before || !pairs.some(({ id }) => id === before.pairId)) return fish
    const key = `${pair.id} ${at.sex}`
    if (seen.has(key)) throw sameInACircle(key)
    seen.add(key)
    at = before
  }
}

const sameInACircle = (animalId: string) =>
  new PedigreeError({ problem: 'loop', animalId, message: `fish "${animalId}" is itself by way of other pairs` })

/** What the lineage package knows a fish by. */
export function fishId(family: Pick<Family, 'pairs'>, pairId: Id, sex: PairSex): string {
  const fish = fishIn(family, pairId, sex)
  return `${fish.pair.id} ${fish.sex}`
}

/** Both fish of the pair that laid a clutch; a clutch that is not known says nothing of its parents. */
export function parentsIn(family: Family, clutchId: Id | null): Pick<PedigreeEntry, 'sireId' | 'damId'> {
  const clutch = clutchId === null ? undefined : family.clutches.get(clutchId)
  if (!clutch) return { sireId: null, damId: null }
  return { sireId: fishId(family, clutch.pairId, 'male'), damId: fishId(family, clutch.pairId, 'female') }
}

/** The fish of all pairs with their parents, each once, as the lineage package reads them. */
export function pedigreeOf(family: Family): PedigreeEntry[] {
  const all = family.pairs.flatMap((pair) => pairSexes.map((sex) => fishIn(family, pair.id, sex)))
  const once = new Map(all.map((fish) => [`${fish.pair.id} ${fish.sex}`, fish]))
  return [...once].map(([id, { pair, sex }]) => ({ id, ...parentsIn(family, pair.from[sex]) }))
}

/**
 * Who is related to whom, with some fish more that are not there yet.
 * @throws PedigreeError when a fish would be its own ancestor.
 */
export const relationshipsIn = (family: Family, more: readonly PedigreeEntry[] = []): Relationships =>
  relationships([...pedigreeOf(family), ...more])
