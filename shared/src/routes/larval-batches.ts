import * as z from 'zod/mini'
import { ChangeLarvalBatchSchema, EndSchema, LarvalBatchSchema, NewLarvalBatchSchema } from '../larval-batch.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('larval batches')

export const larvalBatchRoutes = {
  listLarvalBatches: get('/rooms/:roomId/larval-batches', {
    summary: 'Larval batches',
    permission: 'read',
    params: inRoom,
    response: z.array(LarvalBatchSchema),
  }),
  createLarvalBatch: write('POST', '/rooms/:roomId/larval-batches', {
    summary: 'Record a hatch: larvae of one or more clutches in a tank',
    permission: 'record',
    params: inRoom,
    body: NewLarvalBatchSchema,
    response: LarvalBatchSchema,
  }),
  changeLarvalBatch: write('PATCH', '/rooms/:roomId/larval-batches/:batchId', {
    summary: 'Change a larval batch',
    permission: 'manage',
    params: { ...inRoom, batchId: IdSchema },
    body: ChangeLarvalBatchSchema,
    response: LarvalBatchSchema,
  }),
  endLarvalBatch: write('POST', '/rooms/:roomId/larval-batches/:batchId/end', {
    summary: 'End a larval batch',
    permission: 'manage',
    params: { ...inRoom, batchId: IdSchema },
    body: EndSchema,
    response: LarvalBatchSchema,
    status: 200,
  }),
}
