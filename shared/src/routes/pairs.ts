import * as z from 'zod/mini'
import { EndSchema } from '../larval-batch.ts'
import { ChangePairSchema, NewPairSchema, PairSchema } from '../pair.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('pairs')

export const pairRoutes = {
  listPairs: get('/rooms/:roomId/pairs', {
    summary: 'Pairs',
    permission: 'read',
    params: inRoom,
    response: z.array(PairSchema),
  }),
  createPair: write('POST', '/rooms/:roomId/pairs', {
    summary: 'Add a pair',
    permission: 'manage',
    params: inRoom,
    body: NewPairSchema,
    response: PairSchema,
  }),
  changePair: write('PATCH', '/rooms/:roomId/pairs/:pairId', {
    summary: 'Change a pair',
    permission: 'manage',
    params: { ...inRoom, pairId: IdSchema },
    body: ChangePairSchema,
    response: PairSchema,
  }),
  endPair: write('POST', '/rooms/:roomId/pairs/:pairId/end', {
    summary: 'End a pair',
    permission: 'manage',
    params: { ...inRoom, pairId: IdSchema },
    body: EndSchema,
    response: PairSchema,
    status: 200,
  }),
}
