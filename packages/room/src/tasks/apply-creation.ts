import type { Creation } from '@fryward/husbandry'
import type { Id, Instant } from '@fryward/shared'
import { insertClutch } from '../clutches/insert-clutch.ts'
import type { BeyondBook } from '../facts/book.ts'
import type { Work } from '../frame/write-in-room.ts'
import { insertJuvenileGroup } from '../juvenile-groups/insert-juvenile-group.ts'
import { insertLarvalBatch } from '../larval-batches/insert-larval-batch.ts'

/** Brings into being what a sign-off found: a clutch, a larval batch on the morning after, settled fish in grow-out. */
export async function applyCreation(
  work: Work,
  { creation, signOffId, beyondBook }: { creation: Creation; doneAt: Instant; signOffId: Id; beyondBook: BeyondBook },
): Promise<void> {
  if (creation.kind === 'clutch') {
    await insertClutch(work, {
      input: { pairId: creation.pairId, spawnedAt: creation.spawnedAt, eggs: creation.eggs, intent: 'undecided' },
      signOffId,
    })
    return
  }
  if (creation.kind === 'juvenile_group') {
    const { kind: _kind, ...group } = creation
    await insertJuvenileGroup(work, { input: { ...group, note: '' }, signOffId, beyondBook })
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
