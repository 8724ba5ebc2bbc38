import { HandOverNoteSchema, HandOverSchema, LookedSchema, NewHandOverNoteSchema } from '../hand-over.ts'
import { IdSchema } from '../primitives.ts'
import { EmptySchema, inRoom, OkSchema, routesTagged } from './route.ts'

const { get, write } = routesTagged('hand-over')

export const handOverRoutes = {
  getHandOver: get('/rooms/:roomId/hand-over', {
    summary: 'What the next caretaker needs to know',
    permission: 'read',
    params: inRoom,
    response: HandOverSchema,
  }),
  markLooked: write('PUT', '/rooms/:roomId/hand-over/looked', {
    summary: 'I have read up to this revision',
    permission: 'read',
    params: inRoom,
    body: LookedSchema,
    response: OkSchema,
  }),
  writeNote: write('POST', '/rooms/:roomId/notes', {
    summary: 'Write a hand-over note or a worry',
    permission: 'record',
    params: inRoom,
    body: NewHandOverNoteSchema,
    response: HandOverNoteSchema,
  }),
  settleWorry: write('POST', '/rooms/:roomId/notes/:noteId/settle', {
    summary: 'A worry is over',
    permission: 'record',
    params: { ...inRoom, noteId: IdSchema },
    body: EmptySchema,
    response: HandOverNoteSchema,
    status: 200,
  }),
}
