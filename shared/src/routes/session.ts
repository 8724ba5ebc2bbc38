import { SignInSchema } from '../person.ts'
import { EmptySchema, OkSchema, routesTagged } from './route.ts'

const { write } = routesTagged('session', '/api/auth')

export const sessionRoutes = {
  signIn: write('POST', '/sign-in/email', {
    summary: 'Sign in with email and password; the answer sets the session cookie',
    permission: 'anyone',
    body: SignInSchema,
    response: OkSchema,
    status: 200,
  }),
  signOut: write('POST', '/sign-out', {
    summary: 'End the session of the cookie that comes with this request',
    permission: 'anyone',
    body: EmptySchema,
    response: OkSchema,
    status: 200,
  }),
}
