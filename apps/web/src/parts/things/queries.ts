import type { BodyInputOf, Id } from '@fryward/shared'
import { call } from '@/base/api/call.ts'
import { useRoomWrite } from '@/parts/rooms/queries.ts'

type EndInput = BodyInputOf<'endTank'>
export type Endable = { kind: 'tank' | 'culture' | 'pair' | 'larval_batch' | 'juvenile_group'; id: Id }

/** Takes a thing out of use, whatever it is; its history stays. */
export const useEnd = (roomId: Id, thing: Endable) =>
  useRoomWrite(roomId, async (body: EndInput) => {
    if (thing.kind === 'tank') await call('endTank', { params: { roomId, tankId: thing.id }, body })
    if (thing.kind === 'culture') await call('endCulture', { params: { roomId, cultureId: thing.id }, body })
    if (thing.kind === 'pair') await call('endPair', { params: { roomId, pairId: thing.id }, body })
    if (thing.kind === 'larval_batch') await call('endLarvalBatch', { params: { roomId, batchId: thing.id }, body })
    if (thing.kind === 'juvenile_group') await call('endJuvenileGroup', { params: { roomId, groupId: thing.id }, body })
  })
