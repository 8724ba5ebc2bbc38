import type { Creation } from '@fryward/husbandry'
import { type Id, type Instant, NewCultureSchema, NewTankSchema } from '@fryward/shared'
import { freeName, insertClutch } from '../clutches/insert-clutch.ts'
import { insertCulture } from '../cultures/create-culture.ts'
import type { BeyondBook } from '../facts/book.ts'
import { insertFact } from '../facts/insert-fact.ts'
import { insertFeedLink } from '../feed-links/insert-feed-link.ts'
import type { Work } from '../frame/write-in-room.ts'
import { insertJuvenileGroup } from '../juvenile-groups/insert-juvenile-group.ts'
import { insertLarvalBatch } from '../larval-batches/insert-larval-batch.ts'
import { insertTank } from '../tanks/create-tank.ts'

/** Brings into being what a sign-off found: a clutch, a larval batch on the morning after, settled fish in grow-out. */
export async function applyCreation(
  work: Work,
  {
    creation,
    doneAt,
    signOffId,
    beyondBook,
  }: { creation: Creation; doneAt: Instant; signOffId: Id; beyondBook: BeyondBook },
): Promise<void> {
  if (creation.kind === 'clutch') {
    await insertClutch(work, {
      input: {
        pairId: creation.pairId,
        spawnedAt: creation.spawnedAt,
        eggs: creation.eggs,
        intent: creation.intent ?? 'undecided',
      },
      signOffId,
    })
    return
  }
  if (creation.kind === 'culture') {
    await startCulture(work, { creation, doneAt, signOffId })
    return
  }
  if (creation.kind === 'juvenile_group') {
    const { kind: _kind, ...group } = creation
    await insertJuvenileGroup(work, { input: { ...group, note: '' }, signOffId, beyondBook })
    return
  }
  const { tank, species, clutchIds, hatchedOn, larvae, cultureIds } = creation
  const tankId = 'id' in tank ? tank.id : await insertLarvalTank(work, tank)
  const batchId = await insertLarvalBatch(work, {
    input: { tankId, species, clutchIds, hatchedOn, larvae, note: '' },
    signOffId,
  })
  for (const cultureId of cultureIds) await insertFeedLink(work, { batchId, cultureId, fromOn: hatchedOn })
}

type CultureStart = { creation: Extract<Creation, { kind: 'culture' }>; doneAt: Instant; signOffId: Id }

/** A culture with what went into it, and what that took of its parent; its name is there to be changed. */
async function startCulture(work: Work, { creation, doneAt, signOffId }: CultureStart): Promise<void> {
  const { kind: _kind, drawnL, parentCultureId, ...vessel } = creation
  const name = await freeName(work, 'New rotifers')
  const input = NewCultureSchema.parse({ ...vessel, parentCultureId, name, kind: 'rotifer', startedAt: doneAt })
  const id = await insertCulture(work, input, signOffId)
  if (parentCultureId === null || drawnL <= 0) return
  const parts = [{ to: 'culture' as const, subjectId: id, volumeL: drawnL }]
  const fact = { kind: 'harvest' as const, subjectId: parentCultureId, data: { volumeL: drawnL, parts } }
  await insertFact(work, { fact, at: doneAt, signOffId })
}

/** A tank that somebody put larvae into before it was on the list; its name is there to be changed. */
async function insertLarvalTank(
  work: Work,
  tank: { volumeL: number; temperatureC: number; salinity: number },
): Promise<Id> {
  const name = await freeName(work, 'Larval tank')
  return insertTank(work, NewTankSchema.parse({ ...tank, name, kind: 'larval' }))
}
