import {
  type ChangedSpecies,
  type ChangeOtherSpecies,
  type Id,
  otherSpeciesId,
  readOtherSpecies,
} from '@fryward/shared'
import type { Context } from '../context.ts'
import { invalid, notFound } from '../errors.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'

type Said = { species: string; input: ChangeOtherSpecies }

/** What is known of a species is its id, so it is said anew wherever it stands in this room: rules read the new one. */
export async function changeOtherSpecies({
  ctx,
  roomId,
  ...said
}: { ctx: Context; roomId: Id } & Said): Promise<ChangedSpecies> {
  return writeInRoom({ ctx, roomId, permission: 'own' }, async (work) => {
    const before = readOtherSpecies(said.species)
    if (!before) throw notFound('species without a profile')
    const species = idOf(said.input)
    if ((await renameEverywhere(work, { from: said.species, to: species })) === 0)
      throw notFound('species without a profile')
    work.audit({
      action: 'species.change',
      detail: { before: said.species, species },
      why: `what is known of ${before.name} was changed`,
    })
    return { species }
  })
}

function idOf(input: ChangeOtherSpecies): string {
  const id = otherSpeciesId(input)
  if (id === null)
    throw invalid(
      'name',
      'Give the scientific name in letters from a to z, such as Synchiropus splendidus.',
      input.name,
    )
  return id
}

/** @returns in how many places it stood. */
async function renameEverywhere({ tx, roomId }: Work, { from, to }: { from: string; to: string }): Promise<number> {
  const rename = { where: { roomId, species: from }, data: { species: to } }
  const renamed = [
    await tx.pair.updateMany(rename),
    await tx.larvalBatch.updateMany(rename),
    await tx.juvenileGroup.updateMany(rename),
  ]
  return renamed.reduce((sum, { count }) => sum + count, 0)
}
