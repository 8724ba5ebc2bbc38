import type { RawRequest } from '../send.ts'
import { change, end, inRoom, type Requests, type Writing } from './writing.ts'

const createLarvalBatch = (writing: Writing): RawRequest => ({
  params: inRoom(writing),
  body: {
    name: `Batch ${writing.serial}`,
    tankId: writing.full.larvalTank.id,
    species: 'amphiprion-ocellaris',
    hatchedOn: writing.world.clock.now().slice(0, 10),
    larvae: 100,
  },
})

export const larvalBatchRequests = {
  listLarvalBatches: (writing) => ({ params: inRoom(writing) }),
  createLarvalBatch,
  changeLarvalBatch: change('batchId', 'batch', { note: 'looks well' }),
  endLarvalBatch: end('batchId', ['createLarvalBatch', createLarvalBatch]),
} satisfies Requests
