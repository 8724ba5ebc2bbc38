import * as z from 'zod/mini'
import { EndSchema } from '../larval-batch.ts'
import { IdSchema } from '../primitives.ts'
import { ChangeTankSchema, NewTankSchema, TankSchema } from '../tank.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('tanks')

export const tankRoutes = {
  listTanks: get('/rooms/:roomId/tanks', {
    summary: 'Tanks',
    permission: 'read',
    params: inRoom,
    response: z.array(TankSchema),
  }),
  createTank: write('POST', '/rooms/:roomId/tanks', {
    summary: 'Add a tank',
    permission: 'manage',
    params: inRoom,
    body: NewTankSchema,
    response: TankSchema,
  }),
  changeTank: write('PATCH', '/rooms/:roomId/tanks/:tankId', {
    summary: 'Change a tank',
    permission: 'manage',
    params: { ...inRoom, tankId: IdSchema },
    body: ChangeTankSchema,
    response: TankSchema,
  }),
  endTank: write('POST', '/rooms/:roomId/tanks/:tankId/end', {
    summary: 'Take a tank out of use',
    permission: 'manage',
    params: { ...inRoom, tankId: IdSchema },
    body: EndSchema,
    response: TankSchema,
    status: 200,
  }),
}
