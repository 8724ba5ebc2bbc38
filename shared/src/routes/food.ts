import { FoodViewSchema, FoodWhatIfSchema, WhatIfSchema } from '../food.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('food')

export const foodRoutes = {
  getFood: get('/rooms/:roomId/food', {
    summary: 'The food of the weeks ahead: who eats from what, and how likely it is to fall short',
    permission: 'read',
    params: inRoom,
    response: FoodViewSchema,
  }),
  askWhatIf: write('POST', '/rooms/:roomId/food/what-if', {
    summary: 'The same if something were done or happened; nothing is saved',
    permission: 'record',
    perMinute: 30,
    params: inRoom,
    body: WhatIfSchema,
    response: FoodWhatIfSchema,
    status: 200,
  }),
}
