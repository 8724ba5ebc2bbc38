import * as z from 'zod/mini'
import {
  AbsenceSchema,
  ChangeReachSchema,
  ChangeWebhookSchema,
  MessageSchema,
  NewPhoneSchema,
  ReachSchema,
  WebhookSchema,
} from '../message.ts'
import { IdSchema } from '../primitives.ts'
import { EmptySchema, guessesAMinute, inRoom, none, routesTagged } from './route.ts'

const { get, write } = routesTagged('messages')

export const messageRoutes = {
  listMessages: get('/rooms/:roomId/messages', {
    summary: 'Whom alarms were sent to, when, and whether they arrived; newest first',
    permission: 'read',
    params: inRoom,
    response: z.array(MessageSchema),
  }),
  listAbsences: get('/rooms/:roomId/absences', {
    summary: 'When this server was off, so that nobody was told of anything',
    permission: 'read',
    params: inRoom,
    response: z.array(AbsenceSchema),
  }),
  getReach: get('/rooms/:roomId/reach', {
    summary: "How I am told of this room's alarms",
    permission: 'read',
    params: inRoom,
    response: ReachSchema,
  }),
  changeReach: write('PATCH', '/rooms/:roomId/reach', {
    summary: "Whether this room's alarms come to me by mail",
    permission: 'read',
    params: inRoom,
    body: ChangeReachSchema,
    response: ReachSchema,
  }),
  addPhone: write('POST', '/rooms/:roomId/reach/phones', {
    summary: 'Push alarms to this browser',
    permission: 'read',
    params: inRoom,
    body: NewPhoneSchema,
    response: ReachSchema,
  }),
  removePhone: write('DELETE', '/rooms/:roomId/reach/phones/:phoneId', {
    summary: 'Push no more to that browser',
    permission: 'read',
    params: { ...inRoom, phoneId: IdSchema },
    body: none,
    response: ReachSchema,
  }),
  sendTrial: write('POST', '/rooms/:roomId/reach/trial', {
    summary: 'Send me one to try, by every way that reaches me',
    permission: 'read',
    // It goes out into the world.
    perMinute: guessesAMinute,
    params: inRoom,
    body: EmptySchema,
    response: z.array(MessageSchema),
  }),
  getWebhook: get('/rooms/:roomId/webhook', {
    summary: 'Where alarms are posted to',
    permission: 'own',
    params: inRoom,
    response: WebhookSchema,
  }),
  changeWebhook: write('PUT', '/rooms/:roomId/webhook', {
    summary: 'Post alarms to an address, signed; or to none',
    permission: 'own',
    params: inRoom,
    body: ChangeWebhookSchema,
    response: WebhookSchema,
  }),
}
