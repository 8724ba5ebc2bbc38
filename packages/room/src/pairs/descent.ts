import { PedigreeError } from '@fryward/lineage'
import { type Id, type PairSex, type PlainDate, pairSexes, type SameFish } from '@fryward/shared'
import { invalid } from '../errors.ts'
import type { Work } from '../frame/write-in-room.ts'
import { type Family, fishId, readFamily, relationshipsIn } from '../pedigree/family.ts'

/** Where each fish comes from: null for nowhere that is known, left out to leave it as it is. */
export type Descent = {
  femaleFromClutchId?: Id | null | undefined
  maleFromClutchId?: Id | null | undefined
  femaleSameAs?: SameFish | null | undefined
  maleSameAs?: SameFish | null | undefined
}

const fields = {
  female: { clutch: 'femaleFromClutchId', same: 'femaleSameAs' },
  male: { clutch: 'maleFromClutchId', same: 'maleSameAs' },
} as const satisfies Record<PairSex, { clutch: keyof Descent; same: keyof Descent }>

/** Of a fish's two origins the one that holds; what is said now takes the place of the other. */
type Origin = { clutchId: Id | null; same: SameFish | null }

/**
 * Writes down which clutch a pair's fish grew up from, or which fish of another pair they are, once it fits: of this room and
 * of their species; a clutch laid before the pair was formed, and by nobody who descends from them.
 */
export async function keepDescent(work: Work, { pairId, descent }: { pairId: Id; descent: Descent }): Promise<void> {
  const said = pairSexes.flatMap((sex) => {
    const origin = originSaid(descent, sex)
    return origin ? [{ sex, origin }] : []
  })
  if (said.length === 0) return
  const { tx, roomId } = work
  let family = await readFamily(tx, roomId)
  for (const { sex, origin } of said) family = withOrigin(family, { pairId, sex, origin })
  await tx.pairDescent.deleteMany({ where: { roomId, pairId, sex: { in: said.map(({ sex }) => sex) } } })
  await tx.pairDescent.createMany({
    data: said.flatMap(({ sex, origin: { clutchId, same } }) =>
      clutchId || same
        ? [{ roomId, pairId, sex, clutchId, samePairId: same?.pairId ?? null, sameSex: same?.sex ?? null }]
        : [],
    ),
  })
}

/** What is said of a fish now; null where nothing is. */
function originSaid(descent: Descent, sex: PairSex): Origin | null {
  const [clutchId, same] = [descent[fields[sex].clutch], descent[fields[sex].same]]
  if (clutchId === undefined && same === undefined) return null
  if (clutchId && same)
    throw invalid(fields[sex].same, 'The fish of another pair has its own descent: say one of the two, not both.', same)
  return { clutchId: clutchId ?? null, same: same ?? null }
}

type Placed = { pairId: Id; sex: PairSex; origin: Origin }

/** The family with one fish's origin as said. @throws where it cannot be. */
function withOrigin(family: Family, { pairId, sex, origin: { clutchId, same } }: Placed): Family {
  const pair = family.pairs.find(({ id }) => id === pairId)
  if (!pair) throw new Error(`The pair ${pairId} is not among its room's pairs`)
  const { species, formedOn, name } = pair
  if (clutchId) assertClutch(family, { path: fields[sex].clutch, clutchId, species, formedOn })
  if (same) assertSame(family, { path: fields[sex].same, pair, same })
  const next = {
    ...pair,
    from: { ...pair.from, [sex]: clutchId },
    same: { ...pair.same, [sex]: same },
  }
  const after = { ...family, pairs: family.pairs.map((each) => (each.id === pairId ? next : each)) }
  const path = clutchId ? fields[sex].clutch : fields[sex].same
  assertNoLoop(after, { path, what: clutchId ? family.clutches.get(clutchId)?.name : undefined, name })
  if (fishId(after, pairId, 'female') === fishId(after, pairId, 'male'))
    throw invalid(path, 'Then both fish of this pair would be one and the same.')
  return after
}

function assertSame(
  family: Family,
  { path, pair, same }: { path: string; pair: Family['pairs'][number]; same: SameFish },
): void {
  const other = family.pairs.find(({ id }) => id === same.pairId)
  if (!other) throw invalid(path, 'There is no such pair in this room.', same.pairId)
  if (other.id === pair.id) throw invalid(path, 'That is this very pair: choose the fish of another one.', same.pairId)
  if (other.species !== pair.species)
    throw invalid(path, `${other.name} is of another species than this pair; choose a fish of its own.`, same.pairId)
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

function assertNoLoop(family: Family, about: { path: string; what: string | undefined; name: string }): void {
  const { path, what = 'That fish', name } = about
  try {
    relationshipsIn(family)
  } catch (error) {
    if (!(error instanceof PedigreeError)) throw error
    throw invalid(path, `${what} comes of ${name} or of young of it; no fish is its own ancestor.`)
  }
}
