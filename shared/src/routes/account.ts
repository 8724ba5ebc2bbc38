import * as z from 'zod/mini'
import {
  ChangePasswordSchema,
  CodeSchema,
  ConfirmWithPasswordSchema,
  SecondFactorSchema,
  SessionSchema,
  SignInTrySchema,
} from '../account.ts'
import { UserIdSchema } from '../person.ts'
import { guessesAMinute, inRoom, none, OkSchema, routesTagged, withoutRepeatKey } from './route.ts'

const { get, write } = routesTagged('account', withoutRepeatKey)

export const accountRoutes = {
  changePassword: write('POST', '/account/password', {
    summary: 'Give me another password, and end my other sessions',
    permission: 'signed_in',
    perMinute: guessesAMinute,
    body: ChangePasswordSchema,
    response: OkSchema,
    status: 200,
  }),
  listSessions: get('/account/sessions', {
    summary: 'Where I am signed in',
    permission: 'signed_in',
    response: z.array(SessionSchema),
  }),
  endSession: write('DELETE', '/account/sessions/:sessionId', {
    summary: 'Sign me out in another browser',
    permission: 'signed_in',
    params: { sessionId: UserIdSchema },
    body: none,
    response: OkSchema,
  }),
  endOtherSessions: write('DELETE', '/account/sessions', {
    summary: 'Sign me out everywhere but here',
    permission: 'signed_in',
    body: none,
    response: OkSchema,
  }),
  leaveRoom: write('DELETE', '/account/rooms/:roomId', {
    summary: 'Leave a room; what I recorded stays',
    permission: 'signed_in',
    params: inRoom,
    body: none,
    response: OkSchema,
  }),
  listMySignIns: get('/account/sign-ins', {
    summary: 'Tries to sign in as me',
    permission: 'signed_in',
    response: z.array(SignInTrySchema),
  }),
  beginSecondFactor: write('POST', '/account/second-factor', {
    summary: 'Set up an authenticator; it counts once a code of it was confirmed',
    permission: 'signed_in',
    perMinute: guessesAMinute,
    body: ConfirmWithPasswordSchema,
    response: SecondFactorSchema,
  }),
  confirmSecondFactor: write('POST', '/account/second-factor/confirm', {
    summary: 'Ask for a code at every sign-in of mine from now on',
    permission: 'signed_in',
    perMinute: guessesAMinute,
    body: CodeSchema,
    response: OkSchema,
    status: 200,
  }),
  endSecondFactor: write('POST', '/account/second-factor/end', {
    summary: 'Ask for no code any more',
    permission: 'signed_in',
    perMinute: guessesAMinute,
    body: ConfirmWithPasswordSchema,
    response: OkSchema,
    status: 200,
  }),
}
