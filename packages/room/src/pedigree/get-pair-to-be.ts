import type { PedigreeEntry } from '@fryward/lineage'
import type { Id, PairSex, PairToBe, PairToBeQuery } from '@fryward/shared'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { type Family, fishId, fishIn, parentsIn, readFamily, relationshipsIn } from './family.ts'

/** How inbred the young of two fish would be, before the two are put together. */
export async function getPairToBe({
  ctx,
  roomId,
  query,
}: {
  ctx: Context
  roomId: Id
  query: PairToBeQuery
}): Promise<PairToBe> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const family = await readFamily(tx, roomId)
    const female = fishToBe(family, {
      sex: 'female',
      ...{ clutchId: query.femaleFromClutchId, pairId: query.femaleOfPairId },
    })
    const male = fishToBe(family, { sex: 'male', clutchId: query.maleFromClutchId, pairId: query.maleOfPairId })
    if (female.species !== null && male.species !== null && female.species !== male.species)
      throw invalid('maleFromClutchId', 'The two fish are of different species; choose two of one.')
    if (female.id === male.id) throw invalid('maleOfPairId', 'The two are one and the same fish; choose another.')
    const related = relationshipsIn(family, [...female.entries, ...male.entries])
    const relationship = related.between(male.id, female.id)
    return {
      relationship,
      offspringInbreeding: related.offspringInbreeding({ sireId: male.id, damId: female.id }),
      hasUnknownParent: female.isUnknown || male.isUnknown,
    }
  })
}

type Asked = { sex: PairSex; clutchId: Id | undefined; pairId: Id | undefined }
type FishToBe = { id: string; entries: PedigreeEntry[]; species: string | null; isUnknown: boolean }

/** A fish of a pair is known already; a young one of a clutch, or a stranger, comes to the pedigree for this question. */
function fishToBe(family: Family, { sex, clutchId, pairId }: Asked): FishToBe {
  if (pairId !== undefined) {
    const pair = family.pairs.find(({ id }) => id === pairId)
    if (!pair) throw invalid(`${sex}OfPairId`, 'There is no such pair in this room.', pairId)
    const fish = fishIn(family, pairId, sex)
    const isUnknown = fish.pair.from[fish.sex] === null
    return { id: fishId(family, pairId, sex), entries: [], species: pair.species, isUnknown }
  }
  const id = `a ${sex} to be`
  if (clutchId === undefined) return { id, entries: [{ id }], species: null, isUnknown: true }
  const clutch = family.clutches.get(clutchId)
  if (!clutch) throw invalid(`${sex}FromClutchId`, 'There is no such clutch in this room.', clutchId)
  return { id, entries: [{ id, ...parentsIn(family, clutchId) }], species: clutch.species, isUnknown: false }
}
