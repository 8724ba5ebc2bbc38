import * as z from 'zod/mini'
import { ChangeJuvenileGroupSchema, JuvenileGroupSchema, NewJuvenileGroupSchema } from '../juvenile-group.ts'
import { EndSchema } from '../larval-batch.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('juvenile groups')

export const juvenileGroupRoutes = {
  listJuvenileGroups: get('/rooms/:roomId/juvenile-groups', {
    summary: 'Juvenile groups',
    permission: 'read',
    params: inRoom,
    response: z.array(JuvenileGroupSchema),
  }),
  createJuvenileGroup: write('POST', '/rooms/:roomId/juvenile-groups', {
    summary: 'Record settled fish moved to grow-out',
    permission: 'record',
    params: inRoom,
    body: NewJuvenileGroupSchema,
    response: JuvenileGroupSchema,
  }),
  changeJuvenileGroup: write('PATCH', '/rooms/:roomId/juvenile-groups/:groupId', {
    summary: 'Change a juvenile group',
    permission: 'manage',
    params: { ...inRoom, groupId: IdSchema },
    body: ChangeJuvenileGroupSchema,
    response: JuvenileGroupSchema,
  }),
  endJuvenileGroup: write('POST', '/rooms/:roomId/juvenile-groups/:groupId/end', {
    summary: 'End a juvenile group',
    permission: 'manage',
    params: { ...inRoom, groupId: IdSchema },
    body: EndSchema,
    response: JuvenileGroupSchema,
    status: 200,
  }),
}
