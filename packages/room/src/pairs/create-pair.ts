import { findSpecies, speciesProfiles } from '@fryward/husbandry'
import type { Id, NewPair, Pair } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import type { Context } from '../context.ts'
import { invalid } from '../errors.ts'
import { insertSubject } from '../frame/subject-row.ts'
import { type Work, writeInRoom } from '../frame/write-in-room.ts'
import { assertWarmEnough } from '../tanks/inhabitant.ts'
import { keepDescent } from './descent.ts'
import { getPairInRoom } from './pair-view.ts'

export async function createPair({ ctx, roomId, input }: { ctx: Context; roomId: Id; input: NewPair }): Promise<Pair> {
  return writeInRoom({ ctx, roomId, permission: 'manage' }, (work) => insertPair(work, input), getPairInRoom)
}

/** A pair in a tank of the room that is in use. */
export async function insertPair(work: Work, input: NewPair): Promise<Id> {
  const { name, note, formedOn, femaleFromClutchId, maleFromClutchId, femaleSameAs, maleSameAs, ...pair } = input
  const descent = { femaleFromClutchId, maleFromClutchId, femaleSameAs, maleSameAs }
  assertSpecies(pair.species)
  await assertTank(work, pair.tankId)
  const id = await insertSubject(work, { kind: 'pair', name, note })
  const { roomId } = work
  await work.tx.pair.create({ data: { roomId, id, ...pair, formedOn: formedOn ? toDateColumn(formedOn) : null } })
  await keepDescent(work, { pairId: id, descent })
  work.audit({
    action: 'pair.create',
    subjectId: id,
    detail: { name, formedOn, ...pair, ...descent },
    why: `${name} was added`,
  })
  return id
}

export function assertSpecies(species: string): void {
  if (!findSpecies(species))
    throw invalid(
      'species',
      `"${species}" is not a known species; it is one of ${speciesProfiles.map((profile) => profile.id).join(', ')}, or another by its scientific name.`,
      species,
    )
}

export async function assertTank(work: Work, tankId: Id): Promise<void> {
  const tank = await work.tx.tank.findUnique({
    where: { roomId_id: { roomId: work.roomId, id: tankId } },
    include: { subject: true },
  })
  if (!tank) throw invalid('tankId', 'There is no such tank in this room.', tankId)
  assertWarmEnough({ name: tank.subject.name, temperatureC: tank.temperatureC }, 'tankId')
  if (tank.subject.endedAt) throw invalid('tankId', `${tank.subject.name} is out of use; choose another tank.`, tankId)
}
