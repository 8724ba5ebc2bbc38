import { AuditPageSchema, AuditQuerySchema } from '../audit.ts'
import { FactPageSchema, FactQuerySchema, FactSchema, NewFactSchema, StrikeFactSchema } from '../facts/fact.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('facts')

export const factRoutes = {
  listFacts: get('/rooms/:roomId/facts', {
    summary: 'What happened, newest first',
    permission: 'read',
    params: inRoom,
    query: FactQuerySchema,
    response: FactPageSchema,
  }),
  recordFact: write('POST', '/rooms/:roomId/facts', {
    summary: 'Record a fact without a task',
    permission: 'record',
    params: inRoom,
    body: NewFactSchema,
    response: FactSchema,
  }),
  strikeFact: write('POST', '/rooms/:roomId/facts/:factId/strike', {
    summary: 'Strike out a mistake, with a reason',
    permission: 'record',
    params: { ...inRoom, factId: IdSchema },
    body: StrikeFactSchema,
    response: FactSchema,
    status: 200,
  }),
  listAudit: get('/rooms/:roomId/audit', {
    summary: 'Who wrote what, newest first',
    permission: 'read',
    params: inRoom,
    query: AuditQuerySchema,
    response: AuditPageSchema,
  }),
}
