import { effectiveSize, inbreedingPerGeneration, type Relationships } from '@fryward/lineage'
import { type Id, type Pedigree, type PedigreeFish, pairSexes } from '@fryward/shared'
import type { Context } from '../context.ts'
import { readInRoom } from '../frame/read-in-room.ts'
import { type Family, type FamilyPair, fishId, readFamily, relationshipsIn } from './family.ts'

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
          sireId: fishId(pair.id, 'male'),
          damId: fishId(pair.id, 'female'),
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
    const clutch = family.clutches.get(pair.from[sex] ?? '')
    const parents = family.pairs.find(({ id }) => id === clutch?.pairId)
    return {
      pair: { id: pair.id, kind: 'pair', name: pair.name },
      sex,
      species: pair.species,
      isLiving: pair.isLiving,
      fromClutch: clutch ? { id: clutch.id, kind: 'clutch', name: clutch.name } : null,
      parents: parents ? { id: parents.id, kind: 'pair', name: parents.name } : null,
      generation: parents ? generationOf(parents.id) + 1 : 0,
      inbreeding: related.inbreeding(fishId(pair.id, sex)),
    }
  })
}

/** Steps from a pair up to its furthest founder: 0 for two founders. No pair is its own ancestor. */
function generationsIn({ pairs, clutches }: Family): (pairId: Id) => number {
  const known = new Map<Id, number>()
  const generationOf = (pairId: Id): number => {
    const found = known.get(pairId)
    if (found !== undefined) return found
    const from = pairs.find(({ id }) => id === pairId)?.from
    const above = pairSexes.flatMap((sex) => {
      const parents = clutches.get(from?.[sex] ?? '')?.pairId
      return parents === undefined ? [] : [generationOf(parents) + 1]
    })
    const generation = Math.max(0, ...above)
    known.set(pairId, generation)
    return generation
  }
  return generationOf
}

function stockOf({ pairs, clutches }: Family, species: string): Pedigree['bySpecies'][number] {
  const own = pairs.filter((pair) => pair.species === species)
  const living = own.filter(({ isLiving }) => isLiving).length
  const founders = own.flatMap(({ from }) => pairSexes.filter((sex) => !clutches.has(from[sex] ?? ''))).length
  const size = living > 0 ? effectiveSize({ males: living, females: living }) : null
  return {
    species,
    founders,
    males: living,
    females: living,
    effectiveSize: size,
    inbreedingPerGeneration: size === null ? null : inbreedingPerGeneration({ effectiveSize: size }),
  }
}
