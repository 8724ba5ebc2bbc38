import * as z from 'zod/mini'
import { SignInTrySchema } from '../account.ts'
import { ClaimSchema, ServerStatusSchema } from '../person.ts'
import { ServerStateSchema } from '../server-state.ts'
import { guessesAMinute, OkSchema, routesTagged } from './route.ts'

const { get, write, download } = routesTagged('server')

export const serverRoutes = {
  getAlive: get('/alive', {
    summary: 'Does the server answer, whatever its database does',
    permission: 'anyone',
    response: z.object({ status: z.literal('ok'), version: z.string(), now: z.string() }),
  }),
  getHealth: get('/health', {
    summary: 'Is the server ready for work: up, and its database within reach',
    permission: 'anyone',
    response: z.object({ status: z.literal('ok'), version: z.string(), now: z.string() }),
  }),
  getServer: get('/server', {
    summary: 'What a stranger may know',
    permission: 'anyone',
    response: ServerStatusSchema,
  }),
  claimServer: write('POST', '/claim', {
    summary: 'Become the first owner with the one-time code',
    permission: 'anyone',
    perMinute: guessesAMinute,
    body: ClaimSchema,
    response: OkSchema,
  }),
  getServerState: get('/server/state', {
    summary: 'How the machine is doing: its disk, and parts that ended by themselves',
    permission: 'own_server',
    isSecret: true,
    response: ServerStateSchema,
  }),
  listSignIns: get('/sign-ins', {
    summary: 'Tries to sign in to this server, the newest first',
    permission: 'own_server',
    isSecret: true,
    response: z.array(SignInTrySchema),
  }),
  downloadBackup: download('/backup', {
    summary: 'One file with everything on the server',
    permission: 'own_server',
    asksAgain: true,
    perMinute: 6,
    gives: 'application/gzip',
  }),
}
