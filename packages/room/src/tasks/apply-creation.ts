import type { Creation } from '@fryward/husbandry'
import type { Id, Instant } from '@fryward/shared'
import { insertClutch } from '../clutches/insert-clutch.ts'
import { insertJuvenileGroup } from '../juvenile-groups/insert-juvenile-group.ts'
import { insertLarvalBatch } from '../larval-batches/insert-larval-batch.ts'
import { changeSubject } from '../work/subject-row.ts'
import type { Work } from '../work/write-in-room.ts'

/**
 * Brings into being what a sign-off found (a clutch, a larval batch on the morning after, settled fish in grow-out), or
 * settles what is meant with a clutch.
 */
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
  if (creation.kind === 'clutch_intent') {
    await settleIntent(work, creation)
    return
  }
  if (creation.kind === 'juvenile_group') {
    const { kind: _kind, ...group } = creation
    await insertJuvenileGroup(work, { input: { ...group, note: '' }, signOffId })
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

/** Taking the sign-off back does not restore the former intent: no record holds it; it is changed on the clutch's page. */
async function settleIntent(
  work: Work,
  { clutchId, intent }: Extract<Creation, { kind: 'clutch_intent' }>,
): Promise<void> {
  await changeSubject(work, { id: clutchId })
  await work.tx.clutch.update({ where: { roomId_id: { roomId: work.roomId, id: clutchId } }, data: { intent } })
  work.audit({ action: 'clutch.change', subjectId: clutchId, detail: { intent } })
}
