import * as z from 'zod/mini'
import {
  AskResetSchema,
  ChangePasswordSchema,
  CodeSchema,
  ConfirmWithPasswordSchema,
  NewPasswordSchema,
  NewResetLinkSchema,
  PasswordResetSchema,
  ResetLinkSchema,
  SecondFactorSchema,
  SessionSchema,
  SignInTrySchema,
} from '../account.ts'
import { TokenSchema, UserIdSchema } from '../person.ts'
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
  askForNewPassword: write('POST', '/account/resets', {
    summary: 'Mail a link for a new password, where there is such an account; the answer never says whether',
    permission: 'anyone',
    perMinute: guessesAMinute,
    body: AskResetSchema,
    response: OkSchema,
    status: 200,
  }),
  getPasswordReset: get('/account/resets/:token', {
    summary: 'Whose new password a link gives',
    permission: 'anyone',
    perMinute: guessesAMinute,
    params: { token: TokenSchema },
    response: PasswordResetSchema,
  }),
  giveNewPassword: write('POST', '/account/resets/:token', {
    summary: 'Give the account of a link a new password, and end all its sessions',
    permission: 'anyone',
    perMinute: guessesAMinute,
    params: { token: TokenSchema },
    body: NewPasswordSchema,
    response: OkSchema,
    status: 200,
  }),
  createResetLink: write('POST', '/account/reset-links', {
    summary: 'Make a link for a new password, for somebody whom no mail reaches',
    permission: 'own_server',
    asksAgain: true,
    body: NewResetLinkSchema,
    response: ResetLinkSchema,
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
