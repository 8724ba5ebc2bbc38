import { PedigreeError } from '@fryward/lineage'
import { type Id, type PairSex, type PlainDate, pairSexes } from '@fryward/shared'
import { invalid } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'
import { type Family, readFamily, relationshipsIn } from '../pedigree/family.ts'

/** The clutch that each fish grew up from: null for none, left out to leave it as it is. */
export type Descent = {
  femaleFromClutchId?: Id | null | undefined
  maleFromClutchId?: Id | null | undefined
}

const fields = { female: 'femaleFromClutchId', male: 'maleFromClutchId' } as const satisfies Record<PairSex, string>

/**
 * Writes down which clutch a pair's fish grew up from, once it fits: a clutch of this room and of their species, laid
 * before the pair was formed, and by nobody who descends from them.
 */
export async function keepDescent(work: Work, { pairId, descent }: { pairId: Id; descent: Descent }): Promise<void> {
  const said = pairSexes.filter((sex) => descent[fields[sex]] !== undefined)
  if (said.length === 0) return
  const { tx, roomId } = work
  await assertDescent(await readFamily(tx, roomId), { pairId, descent })
  await tx.pairDescent.deleteMany({ where: { roomId, pairId, sex: { in: said } } })
  await tx.pairDescent.createMany({
    data: said.flatMap((sex) => {
      const clutchId = descent[fields[sex]]
      return clutchId ? [{ roomId, pairId, sex, clutchId }] : []
    }),
  })
}

async function assertDescent(family: Family, { pairId, descent }: { pairId: Id; descent: Descent }): Promise<void> {
  const pair = family.pairs.find(({ id }) => id === pairId)
  if (!pair) throw new Error(`The pair ${pairId} is not among its room's pairs`)
  for (const sex of pairSexes) {
    const clutchId = descent[fields[sex]]
    if (!clutchId) continue
    assertClutch(family, { path: fields[sex], clutchId, species: pair.species, formedOn: pair.formedOn })
    const from = { ...pair.from, [sex]: clutchId }
    const next = { ...family, pairs: family.pairs.map((each) => (each.id === pairId ? { ...each, from } : each)) }
    assertNoLoop(next, { path: fields[sex], clutchId, name: pair.name })
  }
}

type Asked = { path: string; clutchId: Id }

function assertClutch(
  { clutches }: Family,
  { path, clutchId, species, formedOn }: Asked & { species: string; formedOn: PlainDate | null },
): void {
  const clutch = clutches.get(clutchId)
  if (!clutch) throw invalid(path, 'There is no such clutch in this room.', clutchId)
  if (clutch.species !== species)
    throw invalid(path, `${clutch.name} is of another species than this pair; choose a clutch of their own.`, clutchId)
  if (formedOn !== null && formedOn < clutch.laidOn)
    throw invalid(
      path,
      `The pair was together before ${clutch.name} was laid; choose an older clutch, or change the date of the pair.`,
      clutchId,
    )
}

function assertNoLoop(family: Family, { path, clutchId, name }: Asked & { name: string }): void {
  try {
    relationshipsIn(family)
  } catch (error) {
    if (!(error instanceof PedigreeError)) throw error
    const clutch = family.clutches.get(clutchId)?.name ?? 'That clutch'
    throw invalid(path, `${clutch} was laid by ${name} or by young of it; no fish is its own ancestor.`, clutchId)
  }
}
