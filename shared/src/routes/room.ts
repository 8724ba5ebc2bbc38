import * as z from 'zod/mini'
import { RoomEventSchema } from '../audit.ts'
import { ChangeRoomSchema, RoomSchema, RoomSetupSchema } from '../room.ts'
import { SpeciesSummarySchema } from '../species.ts'
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
