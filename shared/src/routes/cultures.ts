import * as z from 'zod/mini'
import {
  ChangeCultureSchema,
  CultureOutlookSchema,
  CultureSchema,
  EndCultureSchema,
  PostCultureSchema,
} from '../culture.ts'
import { IdSchema } from '../primitives.ts'
import { wholeInAddress, withDefault } from '../shapes.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write } = routesTagged('cultures')

export const cultureRoutes = {
  listCultures: get('/rooms/:roomId/cultures', {
    summary: 'Cultures',
    permission: 'read',
    params: inRoom,
    response: z.array(CultureSchema),
  }),
  createCulture: write('POST', '/rooms/:roomId/cultures', {
    summary: 'Start a culture',
    permission: 'manage',
    params: inRoom,
    body: PostCultureSchema,
    response: CultureSchema,
  }),
  changeCulture: write('PATCH', '/rooms/:roomId/cultures/:cultureId', {
    summary: 'Change a culture',
    permission: 'manage',
    params: { ...inRoom, cultureId: IdSchema },
    body: ChangeCultureSchema,
    response: CultureSchema,
  }),
  endCulture: write('POST', '/rooms/:roomId/cultures/:cultureId/end', {
    summary: 'End a culture',
    permission: 'manage',
    params: { ...inRoom, cultureId: IdSchema },
    body: EndCultureSchema,
    response: CultureSchema,
    status: 200,
  }),
  getCultureOutlook: get('/rooms/:roomId/cultures/:cultureId/outlook', {
    summary: 'Density behind and ahead, under a stated daily harvest',
    permission: 'read',
    params: { ...inRoom, cultureId: IdSchema },
    query: z.strictObject({
      harvestShare: z.optional(z.coerce.number().check(z.minimum(0), z.maximum(0.9))),
      days: withDefault(wholeInAddress(1, 21), 10),
    }),
    response: CultureOutlookSchema,
  }),
}
