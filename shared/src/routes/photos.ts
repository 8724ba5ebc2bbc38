import * as z from 'zod/mini'
import { MarkPhotoSchema, NewPhotoQuerySchema, PhotoSchema } from '../photo.ts'
import { maximumPhotoBytes, photoSizes, photoTypes } from '../photo-file.ts'
import { IdSchema } from '../primitives.ts'
import { inRoom, none, OkSchema, routesTagged } from './route.ts'

const { get, write, upload, download } = routesTagged('photos')

export const photoRoutes = {
  listPhotos: get('/rooms/:roomId/photos', {
    summary: 'Photos of the room or of one of its things, newest first',
    permission: 'read',
    params: inRoom,
    query: z.strictObject({ subjectId: z.optional(IdSchema) }),
    response: z.array(PhotoSchema),
  }),
  addPhoto: upload('/rooms/:roomId/photos', {
    summary: 'Put a photo on a thing or on one of its records',
    permission: 'record',
    params: inRoom,
    query: NewPhotoQuerySchema,
    takes: photoTypes,
    mostBytes: maximumPhotoBytes,
    response: PhotoSchema,
  }),
  getPhotoFile: download('/rooms/:roomId/photos/:photoId/:size', {
    summary: 'The picture itself, whole or small',
    permission: 'read',
    params: { ...inRoom, photoId: IdSchema, size: z.enum(photoSizes) },
    gives: 'image/jpeg',
  }),
  listLooks: get('/rooms/:roomId/looks', {
    summary: 'Photos that the owner marked as what something looks like here, newest first',
    permission: 'read',
    params: inRoom,
    response: z.array(PhotoSchema),
  }),
  markPhoto: write('PUT', '/rooms/:roomId/photos/:photoId/shows', {
    summary: 'Say what a photo shows, so that the tasks that ask for it show the photo',
    permission: 'own',
    params: { ...inRoom, photoId: IdSchema },
    body: MarkPhotoSchema,
    response: PhotoSchema,
  }),
  strikePhoto: write('DELETE', '/rooms/:roomId/photos/:photoId', {
    summary: 'Take a photo off its record',
    permission: 'record',
    params: { ...inRoom, photoId: IdSchema },
    body: none,
    response: OkSchema,
  }),
}
