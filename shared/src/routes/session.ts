import { CodeSchema, SignedInSchema, SignInAgainSchema } from '../account.ts'
import { SignInSchema } from '../person.ts'
import { EmptySchema, guessesAMinute, OkSchema, routesTagged, withoutRepeatKey } from './route.ts'

const { get, write } = routesTagged('session', withoutRepeatKey)

export const sessionRoutes = {
  signIn: write('POST', '/sign-in/email', {
    summary: 'Sign in with email and password; the answer sets the session cookie',
    permission: 'anyone',
    body: SignInSchema,
    response: SignedInSchema,
    status: 200,
  }),
  signInWithCode: write('POST', '/sign-in/code', {
    summary: 'The second step, where a sign-in asked for a code',
    permission: 'anyone',
    perMinute: guessesAMinute,
    body: CodeSchema,
    response: OkSchema,
    status: 200,
  }),
  signInAgain: write('POST', '/sign-in/again', {
    summary: 'Type my password, and a code where I have a second factor, before something that matters',
    permission: 'signed_in',
    perMinute: guessesAMinute,
    body: SignInAgainSchema,
    response: OkSchema,
    status: 200,
  }),
  getSignedInAgain: get('/sign-in/again', {
    summary: 'Whether I have signed in recently enough for something that matters',
    permission: 'signed_in',
    asksAgain: true,
    response: OkSchema,
  }),
  signOut: write('POST', '/sign-out', {
    summary: 'End the session of the cookie that comes with this request',
    permission: 'anyone',
    body: EmptySchema,
    response: OkSchema,
    status: 200,
  }),
}
