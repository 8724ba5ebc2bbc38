import type { Creation } from '@fryward/husbandry'
import type { Id, Instant } from '@fryward/shared'
import { insertClutch } from '../clutches/insert-clutch.ts'
import { insertLarvalBatch } from '../larval-batches/insert-larval-batch.ts'
import type { Work } from '../work/write-in-room.ts'

/** Brings into being what a sign-off found: a clutch, or a larval batch on the morning after. */
export async function applyCreation(
  work: Work,
  { creation, signOffId }: { creation: Creation; doneAt: Instant; signOffId: Id },
): Promise<void> {
  if (creation.kind === 'clutch') {
    await insertClutch(work, {
      input: { pairId: creation.pairId, spawnedAt: creation.spawnedAt, eggs: creation.eggs, intent: 'undecided' },
      signOffId,
    })
    return
  }
  await insertLarvalBatch(work, {
    input: {
      tankId: creation.tankId,
      species: creation.species,
      clutchIds: creation.clutchIds,
      hatchedOn: creation.hatchedOn,
      larvae: creation.larvae,
      note: '',
    },
    signOffId,
  })
}
