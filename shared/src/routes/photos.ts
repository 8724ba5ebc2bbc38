import * as z from 'zod/mini'
import { PhotoSchema } from '../photo.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, none, OkSchema, routesTagged } from './route.ts'

const { get, write } = routesTagged('photos')

export const photoRoutes = {
  listPhotos: get('/rooms/:roomId/photos', {
    summary: 'Photos of the room or of one of its things, newest first',
    permission: 'read',
    params: inRoom,
    query: z.strictObject({ subjectId: z.optional(IdSchema) }),
    response: z.array(PhotoSchema),
  }),
  strikePhoto: write('DELETE', '/rooms/:roomId/photos/:photoId', {
    summary: 'Take a photo off its record',
    permission: 'record',
    params: { ...inRoom, photoId: IdSchema },
    body: none,
    response: OkSchema,
  }),
}
