import { localDate } from '@fryward/husbandry'
import type { Id, RoomSetup } from '@fryward/shared'
import { invalid } from '../errors.ts'
import { insertFeedLink } from '../feed-links/insert-feed-link.ts'
import type { Work } from '../frame/write-in-room.ts'
import { insertJuvenileGroup } from '../juvenile-groups/insert-juvenile-group.ts'
import { insertLarvalBatch } from '../larval-batches/insert-larval-batch.ts'
import { insertPair } from '../pairs/create-pair.ts'

/** The vessels that a room was just set up with, by their names. */
export type VesselIds = Record<'tank' | 'culture', Map<string, Id>>

/** What lives in a room when it is set up: pairs, larvae and settled fish, each in one of its tanks. */
export async function insertFirstAnimals(work: Work, input: RoomSetup, ids: VesselIds): Promise<void> {
  for (const [i, { tank, ...pair }] of input.pairs.entries()) {
    const origins = { femaleFromClutchId: null, maleFromClutchId: null, femaleSameAs: null, maleSameAs: null }
    const unsaid = { nestSite: '', isResting: false, note: '', ...origins }
    await insertPair(work, { ...pair, ...unsaid, tankId: idOf(ids, 'tank', { name: tank, path: `pairs.${i}.tank` }) })
  }
  for (const [i, { tank, fedFrom, ...batch }] of input.batches.entries()) {
    const tankId = idOf(ids, 'tank', { name: tank, path: `batches.${i}.tank` })
    const batchId = await insertLarvalBatch(work, { input: { ...batch, tankId, clutchIds: [], note: '' } })
    if (fedFrom === undefined) continue
    const cultureId = idOf(ids, 'culture', { name: fedFrom, path: `batches.${i}.fedFrom` })
    const fromOn = localDate({ timeZone: input.timeZone, at: work.ctx.now })
    await insertFeedLink(work, { batchId, cultureId, fromOn })
  }
  for (const [i, { tank, ...group }] of input.groups.entries()) {
    const tankId = idOf(ids, 'tank', { name: tank, path: `groups.${i}.tank` })
    await insertJuvenileGroup(work, { input: { ...group, tankId, note: '' } })
  }
}

function idOf(ids: VesselIds, kind: keyof VesselIds, { name, path }: { name: string; path: string }): Id {
  const id = ids[kind].get(name)
  if (id !== undefined) return id
  throw invalid(path, `No ${kind} of this room is called "${name}". Choose one of its ${kind}s.`, name)
}
