import * as z from 'zod/mini'
import { ChangeClutchSchema, ClutchSchema, NewClutchSchema } from '../clutch.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('clutches')

export const clutchRoutes = {
  listClutches: get('/rooms/:roomId/clutches', {
    summary: 'Clutches, newest first, with the nights they may hatch',
    permission: 'read',
    params: inRoom,
    response: z.array(ClutchSchema),
  }),
  createClutch: write('POST', '/rooms/:roomId/clutches', {
    summary: 'Record eggs laid',
    permission: 'record',
    params: inRoom,
    body: NewClutchSchema,
    response: ClutchSchema,
  }),
  changeClutch: write('PATCH', '/rooms/:roomId/clutches/:clutchId', {
    summary: 'Say what is meant with a clutch',
    permission: 'manage',
    params: { ...inRoom, clutchId: IdSchema },
    body: ChangeClutchSchema,
    response: ClutchSchema,
  }),
}
