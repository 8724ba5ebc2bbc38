import * as z from 'zod/mini'
import { RoomEventSchema } from '../audit.ts'
import { SpeciesIdSchema } from '../pair.ts'
import { ChangeRoomSchema, RoomSchema, RoomSetupSchema } from '../room.ts'
import { ChangedSpeciesSchema, ChangeOtherSpeciesSchema, SpeciesSummarySchema } from '../species.ts'
import { inRoom, routesTagged } from './route.ts'

const { get, write, stream } = routesTagged('room')

export const roomRoutes = {
  createRoom: write('POST', '/rooms', {
    summary: 'Set up a room with its first vessels',
    permission: 'signed_in',
    body: RoomSetupSchema,
    response: RoomSchema,
  }),
  getRoom: get('/rooms/:roomId', {
    summary: 'The room',
    permission: 'read',
    params: inRoom,
    response: RoomSchema,
  }),
  changeRoom: write('PATCH', '/rooms/:roomId', {
    summary: 'Change the room',
    permission: 'own',
    params: inRoom,
    body: ChangeRoomSchema,
    response: RoomSchema,
  }),
  changeOtherSpecies: write('PATCH', '/rooms/:roomId/species/:species', {
    summary: 'Change what this room knows of a species without a profile',
    permission: 'own',
    params: { ...inRoom, species: SpeciesIdSchema },
    body: ChangeOtherSpeciesSchema,
    response: ChangedSpeciesSchema,
  }),
  listenToRoom: stream('/rooms/:roomId/events', {
    summary: 'What happens in the room, as it happens; Last-Event-ID resumes after a gap',
    permission: 'read',
    params: inRoom,
    response: RoomEventSchema,
  }),
  listSpecies: get('/species', {
    summary: 'Known species',
    permission: 'signed_in',
    response: z.array(SpeciesSummarySchema),
  }),
}
