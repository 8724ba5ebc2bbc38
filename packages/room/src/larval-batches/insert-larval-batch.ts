import { batchName, dayMonth, localDate } from '@fryward/husbandry'
import type { Id, NewLarvalBatch } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import { freeName } from '../clutches/insert-clutch.ts'
import { invalid } from '../errors.ts'
import { insertFact } from '../facts/insert-fact.ts'
import { insertSubject } from '../frame/subject-row.ts'
import type { Work } from '../frame/write-in-room.ts'
import { assertSpecies, assertTank } from '../pairs/create-pair.ts'

/** A batch with the hatches it stands on: one a clutch, or its own when the larvae were bought in. */
export async function insertLarvalBatch(
  work: Work,
  { input, signOffId }: { input: NewLarvalBatch; signOffId?: Id },
): Promise<Id> {
  await assertTank(work, input.tankId)
  const { tx, roomId } = work
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  if (input.hatchedOn > localDate({ timeZone: room.timeZone, at: work.ctx.now }))
    throw invalid(
      'hatchedOn',
      `${input.hatchedOn} is still to come; a batch is recorded once it has hatched.`,
      input.hatchedOn,
    )
  const species = await speciesOf(work, input)
  await assertLaidBefore(work, { input, timeZone: room.timeZone })
  const name = input.name ?? (await freeName(work, batchName({ species, hatchedOn: input.hatchedOn })))
  const id = await insertSubject(work, { kind: 'larval_batch', name, note: input.note })
  await tx.larvalBatch.create({
    data: { roomId, id, species, tankId: input.tankId, hatchedOn: toDateColumn(input.hatchedOn) },
  })
  await tx.batchClutch.createMany({ data: input.clutchIds.map((clutchId) => ({ roomId, batchId: id, clutchId })) })
  const hatchSubjects = input.clutchIds.length > 0 ? input.clutchIds : [id]
  for (const [index, subjectId] of hatchSubjects.entries()) {
    // The larvae of a shared tank are one number; it stands with the first clutch.
    const data = { hatchedOn: input.hatchedOn, batchId: id, larvae: index === 0 ? input.larvae : undefined }
    await insertFact(work, { fact: { kind: 'hatch', subjectId, data }, at: work.ctx.now, signOffId })
  }
  work.audit({
    action: 'larval_batch.create',
    subjectId: id,
    detail: {
      name,
      species,
      tankId: input.tankId,
      clutchIds: input.clutchIds,
      hatchedOn: input.hatchedOn,
      larvae: input.larvae ?? null,
    },
    why: 'a clutch hatched',
  })
  return id
}

/** Eggs hatch some nights after they were laid: a date before that is a slip, and larvae are fed by their age. */
async function assertLaidBefore(
  work: Work,
  { input, timeZone }: { input: NewLarvalBatch; timeZone: string },
): Promise<void> {
  const clutches = await work.tx.clutch.findMany({ where: { roomId: work.roomId, id: { in: input.clutchIds } } })
  for (const { spawnedAt } of clutches) {
    const laidOn = localDate({ timeZone, at: spawnedAt.toISOString() })
    if (input.hatchedOn < laidOn)
      throw invalid(
        'hatchedOn',
        `The eggs were laid on ${dayMonth(laidOn)}; they cannot have hatched on ${dayMonth(input.hatchedOn)}.`,
        input.hatchedOn,
      )
  }
}

async function speciesOf(work: Work, input: NewLarvalBatch): Promise<string> {
  if (new Set(input.clutchIds).size !== input.clutchIds.length) throw invalid('clutchIds', 'Each clutch is named once.')
  const clutches = await work.tx.clutch.findMany({
    where: { roomId: work.roomId, id: { in: input.clutchIds } },
    include: { pair: true },
  })
  if (clutches.length !== input.clutchIds.length)
    throw invalid('clutchIds', 'There is no such clutch in this room.', input.clutchIds)
  const [species = input.species, ...others] = [...new Set(clutches.map((clutch) => clutch.pair.species))]
  if (others.length > 0) throw invalid('clutchIds', 'Clutches of different species do not share a batch.')
  if (species === undefined) throw invalid('species', 'Say the species when no clutch of this room is named.')
  if (input.species !== undefined && input.species !== species)
    throw invalid(
      'species',
      `The clutch is another species: leave it out, and it follows from the clutch.`,
      input.species,
    )
  assertSpecies(species)
  return species
}
