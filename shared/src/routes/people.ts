import * as z from 'zod/mini'
import {
  ChangeRoleSchema,
  CreatedInvitationSchema,
  InvitationPreviewSchema,
  InvitationSchema,
  JoinSchema,
  MeSchema,
  NewInvitationSchema,
  PersonSchema,
  TokenSchema,
  UserIdSchema,
} from '../person.ts'
import { IdSchema } from '../primitives.ts'
import { EmptySchema, guessesAMinute, inRoom, none, OkSchema, routesTagged } from './route.ts'

const { get, write } = routesTagged('people')

export const peopleRoutes = {
  getMe: get('/me', {
    summary: 'Who I am and which rooms I am in',
    permission: 'signed_in',
    isSecret: true,
    response: MeSchema,
  }),
  getInvitationPreview: get('/invitations/:token', {
    summary: 'What an invitation link invites to',
    permission: 'anyone',
    perMinute: guessesAMinute,
    params: { token: TokenSchema },
    response: InvitationPreviewSchema,
  }),
  joinByInvitation: write('POST', '/invitations/:token/join', {
    summary: 'Make an account and join the room',
    permission: 'anyone',
    perMinute: guessesAMinute,
    params: { token: TokenSchema },
    body: JoinSchema,
    response: z.object({ roomId: IdSchema }),
  }),
  acceptInvitation: write('POST', '/invitations/:token/accept', {
    summary: 'Join the room as who I am',
    permission: 'signed_in',
    params: { token: TokenSchema },
    body: EmptySchema,
    response: z.object({ roomId: IdSchema }),
  }),
  listPeople: get('/rooms/:roomId/people', {
    summary: 'People of the room',
    permission: 'read',
    params: inRoom,
    response: z.array(PersonSchema),
  }),
  changeRole: write('PATCH', '/rooms/:roomId/people/:userId', {
    summary: 'Give somebody another role',
    permission: 'own',
    asksAgain: true,
    params: { ...inRoom, userId: UserIdSchema },
    body: ChangeRoleSchema,
    response: PersonSchema,
  }),
  removePerson: write('DELETE', '/rooms/:roomId/people/:userId', {
    summary: 'Take somebody out of the room',
    permission: 'own',
    asksAgain: true,
    params: { ...inRoom, userId: UserIdSchema },
    body: none,
    response: OkSchema,
  }),
  listInvitations: get('/rooms/:roomId/invitations', {
    summary: 'Invitations of the room',
    permission: 'own',
    params: inRoom,
    response: z.array(InvitationSchema),
  }),
  createInvitation: write('POST', '/rooms/:roomId/invitations', {
    summary: 'Make an invitation link',
    permission: 'own',
    asksAgain: true,
    params: inRoom,
    body: NewInvitationSchema,
    response: CreatedInvitationSchema,
  }),
  revokeInvitation: write('DELETE', '/rooms/:roomId/invitations/:invitationId', {
    summary: 'Withdraw an invitation',
    permission: 'own',
    params: { ...inRoom, invitationId: IdSchema },
    body: none,
    response: OkSchema,
  }),
}
