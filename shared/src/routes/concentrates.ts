import * as z from 'zod/mini'
import { ChangeConcentrateSchema, ConcentrateSchema, NewConcentrateSchema } from '../concentrate.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('concentrates')

export const concentrateRoutes = {
  listConcentrates: get('/rooms/:roomId/concentrates', {
    summary: 'Bottles of microalgae concentrate',
    permission: 'read',
    params: inRoom,
    response: z.array(ConcentrateSchema),
  }),
  createConcentrate: write('POST', '/rooms/:roomId/concentrates', {
    summary: 'Add a bottle',
    permission: 'manage',
    params: inRoom,
    body: NewConcentrateSchema,
    response: ConcentrateSchema,
  }),
  changeConcentrate: write('PATCH', '/rooms/:roomId/concentrates/:concentrateId', {
    summary: 'Change a bottle',
    permission: 'manage',
    params: { ...inRoom, concentrateId: IdSchema },
    body: ChangeConcentrateSchema,
    response: ConcentrateSchema,
  }),
}
