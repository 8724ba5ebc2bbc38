import { effectiveSize, inbreedingPerGeneration, type Relationships } from '@fryward/lineage'
import { type Id, type PairSex, type Pedigree, type PedigreeFish, pairSexes } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { type Family, type FamilyPair, fishId, fishIn, pedigreeOf, readFamily, relationshipsIn } from './family.ts'

/** Who descends from whom, how inbred each fish and each pair's young are, and how few the stock is bred from. */
export async function getPedigree({ ctx, roomId }: { ctx: Context; roomId: Id }): Promise<Pedigree> {
  return readInRoom({ ctx, roomId }, async ({ tx }) => {
    const family = await readFamily(tx, roomId)
    const related = relationshipsIn(family)
    const generationOf = generationsIn(family)
    return {
      fish: family.pairs.flatMap((pair) => fishOf(pair, { family, related, generationOf })),
      pairs: family.pairs.map((pair) => ({
        pair: { id: pair.id, kind: 'pair', name: pair.name },
        species: pair.species,
        isLiving: pair.isLiving,
        generation: generationOf(pair.id),
        formedOn: pair.formedOn,
        offspringInbreeding: related.offspringInbreeding({
          sireId: fishId(family, pair.id, 'male'),
          damId: fishId(family, pair.id, 'female'),
        }),
      })),
      bySpecies: [...new Set(family.pairs.map(({ species }) => species))]
        .sort()
        .map((species) => stockOf(family, species)),
    }
  })
}

type Known = { family: Family; related: Relationships; generationOf: (pairId: Id) => number }

function fishOf(pair: FamilyPair, { family, related, generationOf }: Known): PedigreeFish[] {
  return pairSexes.map((sex) => {
    const first = fishIn(family, pair.id, sex)
    const same = pair.same[sex]
    const samePair = same && family.pairs.find(({ id }) => id === same.pairId)
    const clutch = family.clutches.get(first.pair.from[first.sex] ?? '')
    const parents = family.pairs.find(({ id }) => id === clutch?.pairId)
    return {
      pair: { id: pair.id, kind: 'pair', name: pair.name },
      sex,
      species: pair.species,
      isLiving: pair.isLiving,
      sameAs: samePair ? { pair: { id: samePair.id, kind: 'pair', name: samePair.name }, sex: same.sex } : null,
      fromClutch: clutch ? { id: clutch.id, kind: 'clutch', name: clutch.name } : null,
      parents: parents ? { id: parents.id, kind: 'pair', name: parents.name } : null,
      generation: parents ? generationOf(parents.id) + 1 : 0,
      inbreeding: related.inbreeding(fishId(family, pair.id, sex)),
    }
  })
}

/** Steps from a pair up to its furthest founder: 0 for two founders. No pair is its own ancestor. */
function generationsIn(family: Family): (pairId: Id) => number {
  const known = new Map<Id, number>()
  const generationOf = (pairId: Id): number => {
    const found = known.get(pairId)
    if (found !== undefined) return found
    const above = pairSexes.flatMap((sex) => {
      const fish = fishIn(family, pairId, sex)
      const parents = family.clutches.get(fish.pair.from[fish.sex] ?? '')?.pairId
      return parents === undefined ? [] : [generationOf(parents) + 1]
    })
    const generation = Math.max(0, ...above)
    known.set(pairId, generation)
    return generation
  }
  return generationOf
}

function stockOf(family: Family, species: string): Pedigree['bySpecies'][number] {
  const own = family.pairs.filter((pair) => pair.species === species)
  // Who spawns in two pairs is one fish all the same.
  const living = (sex: PairSex) =>
    new Set(own.filter(({ isLiving }) => isLiving).map(({ id }) => fishId(family, id, sex))).size
  const [males, females] = [living('male'), living('female')]
  const size = males > 0 ? effectiveSize({ males, females }) : null
  return {
    species,
    founders: pedigreeOf({ ...family, pairs: own }).filter(({ sireId, damId }) => !sireId && !damId).length,
    ...{ males, females },
    effectiveSize: size,
    inbreedingPerGeneration: size === null ? null : inbreedingPerGeneration({ effectiveSize: size }),
  }
}
