import { dayMonth, localDate } from '@fryward/husbandry'
import type { Id, NewJuvenileGroup } from '@fryward/shared'
import { toDateColumn } from '@fryward/store'
import { freeName } from '../clutches/insert-clutch.ts'
import { invalid } from '../errors.ts'
import type { BeyondBook } from '../facts/book.ts'
import { insertFact } from '../facts/insert-fact.ts'
import { insertSubject } from '../frame/subject-row.ts'
import type { Work } from '../frame/write-in-room.ts'
import { assertSpecies, assertTank } from '../pairs/create-pair.ts'

/** A group with the fish it stands on: a transfer out of a batch, or a head count of fish bought in. */
export async function insertJuvenileGroup(
  work: Work,
  {
    input,
    signOffId,
    beyondBook = { path: 'beyondBook' },
  }: { input: NewJuvenileGroup; signOffId?: Id; beyondBook?: BeyondBook },
): Promise<Id> {
  await assertTank(work, input.tankId)
  const { tx, roomId, ctx } = work
  const room = await tx.room.findUniqueOrThrow({ where: { id: roomId } })
  if (input.settledOn > localDate({ timeZone: room.timeZone, at: ctx.now }))
    throw invalid(
      'settledOn',
      `${input.settledOn} is still to come; a group is recorded once its fish have settled.`,
      input.settledOn,
    )
  const batch = input.fromBatchId
    ? await tx.larvalBatch.findUnique({
        where: { roomId_id: { roomId, id: input.fromBatchId } },
        include: { subject: true },
      })
    : null
  if (input.fromBatchId && !batch)
    throw invalid('fromBatchId', 'There is no such larval batch in this room.', input.fromBatchId)
  const species = batch?.species ?? input.species
  if (species === undefined)
    throw invalid('species', 'Say the species of fish that do not come from a batch of this room.')
  if (input.species !== undefined && input.species !== species)
    throw invalid(
      'species',
      `The batch is another species: leave it out, and it follows from the batch.`,
      input.species,
    )
  assertSpecies(species)
  const name = input.name ?? (await freeName(work, `Juveniles, ${dayMonth(input.settledOn)}`))
  const id = await insertSubject(work, { kind: 'juvenile_group', name, note: input.note })
  await tx.juvenileGroup.create({
    data: {
      roomId,
      id,
      species,
      tankId: input.tankId,
      fromBatchId: batch?.id ?? null,
      settledOn: toDateColumn(input.settledOn),
    },
  })
  const { number } = input
  const seen = { lengthMm: input.lengthMm, deformed: input.deformed }
  if (batch) {
    if (number === undefined) throw invalid('number', 'Say how many fish came out of the batch: they leave its book.')
    const data = { number, toSubjectId: id, ...seen, beyondBook: input.beyondBook }
    await insertFact(work, {
      fact: { kind: 'transfer', subjectId: batch.id, data },
      at: ctx.now,
      signOffId,
      beyondBook,
    })
  } else if (number !== undefined) {
    const data = { of: 'juveniles' as const, animals: [number], ...seen }
    await insertFact(work, { fact: { kind: 'count', subjectId: id, data }, at: ctx.now, signOffId })
  }
  work.audit({
    action: 'juvenile_group.create',
    subjectId: id,
    detail: { name, species, tankId: input.tankId, fromBatchId: batch?.id ?? null, number: number ?? null },
    why: 'settled fish were moved to grow-out',
  })
  return id
}
