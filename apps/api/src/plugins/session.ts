import type { Actor, Context } from '@fryward/room'
import { RoomError } from '@fryward/room'
import { type BodyOf, type ErrorCode, personHeader } from '@fryward/shared'
import type { Database } from '@fryward/store'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'
import { type Auth, clientAddressHeader } from '../auth.ts'
import { recentSessions } from '../recent-sessions.ts'

type Person = Extract<Actor, { kind: 'person' }>

/** What only the front door can do for a request: give its browser a session, and take it away. */
export type Door = { signIn: (credentials: BodyOf<'signIn'>) => Promise<void>; signOut: () => Promise<void> }

declare module 'fastify' {
  interface FastifyInstance {
    /** Who asks, from the session cookie; not_signed_in when nobody does. */
    personOf: (request: FastifyRequest) => Promise<Person>
    contextFor: (actor: Actor) => Context
    doorOf: (request: FastifyRequest, reply: FastifyReply) => Door
  }
}

export type SessionOptions = { auth: Auth; database: Database; now: () => string; publicUrl: string }

/** The person behind a request, and the two routes of the sign-in library that are open: in and out. */
export const session = fp(
  async (app: FastifyInstance, { auth, database, now, publicUrl }: SessionOptions) => {
    app.decorate('contextFor', (actor: Actor): Context => ({ database, actor, now: now() }))
    const recent = recentSessions()
    const lookUp = async (request: FastifyRequest): Promise<Person> => {
      const found = await auth.api.getSession({ headers: headersOf(request) })
      if (!found)
        throw new RoomError('not_signed_in', 'Sign in first; what you have typed stays on this phone until then.')
      return { kind: 'person', userId: found.user.id, name: found.user.name }
    }
    app.decorate('personOf', async (request: FastifyRequest) => {
      const person = await recent.find(request.headers.cookie ?? '', () => lookUp(request))
      const meantFor = request.headers[personHeader]
      // A page left open may still send for whoever was signed in before: nothing is booked in another's name.
      if (meantFor !== undefined && meantFor !== person.userId)
        throw new RoomError('not_signed_in', `${person.name} is signed in here. Sign in as yourself to send this.`)
      return person
    })
    app.decorate('doorOf', (request: FastifyRequest, reply: FastifyReply): Door => {
      const pass = async (path: string, body: object) => {
        await passToAuth({ auth, request, reply, publicUrl }, path, body)
        // Signing out holds at once; afterwards, as another request may have asked meanwhile.
        recent.forgetAll()
      }
      return {
        signIn: (credentials) => pass('/sign-in/email', credentials),
        signOut: () => pass('/sign-out', {}),
      }
    })
  },
  { name: 'session' },
)

type Passing = { auth: Auth; request: FastifyRequest; reply: FastifyReply; publicUrl: string }

/** The library's whole handler, not its bare function: its limit on tries stands in there. */
async function passToAuth({ auth, request, reply, publicUrl }: Passing, path: string, body: object): Promise<void> {
  const headers = headersOf(request)
  headers.set('content-type', 'application/json')
  // Our own check has let the request in; the library's is told so in its own terms.
  headers.set('origin', new URL(publicUrl).origin)
  const url = new URL(`/api/auth${path}`, publicUrl)
  const answer = await auth.handler(new Request(url, { method: 'POST', headers, body: JSON.stringify(body) }))
  if (answer.status >= 400) throw await refusalOf(answer, request, reply)
  for (const cookie of answer.headers.getSetCookie()) reply.header('set-cookie', cookie)
}

const refusals: Record<number, { code: ErrorCode; detail: string }> = {
  401: {
    code: 'not_signed_in',
    detail: 'This email and password do not go together. Check both and try again.',
  },
  403: { code: 'not_allowed', detail: "This cannot be done from here; sign in on this server's own page." },
  429: { code: 'too_many_requests', detail: 'Too many tries. Wait a minute, then try once more.' },
}

/** The sign-in library has errors of its own shape and codes; whoever asks gets ours, as from every other route. */
async function refusalOf(answer: Response, request: FastifyRequest, reply: FastifyReply): Promise<RoomError> {
  const wait = answer.headers.get('x-retry-after') ?? answer.headers.get('retry-after')
  if (wait) reply.header('retry-after', wait)
  const known = refusals[answer.status]
  if (known) return new RoomError(known.code, known.detail)
  request.log.error({ status: answer.status, answer: await answer.text() }, 'the sign-in failed')
  return answer.status >= 500
    ? new RoomError('unavailable', 'The server cannot sign anybody in right now. Try again in a moment.')
    : new RoomError('invalid_input', 'The sign-in cannot use this. Check the email and the password.')
}

// Kept beside a session, for its owner to tell one browser from another; no browser says more of itself.
const mostLettersOfBrowser = 300

/** What the library needs to know of a request, and nothing else that a stranger may write into one. */
function headersOf(request: FastifyRequest): Headers {
  const headers = new Headers({ [clientAddressHeader]: request.ip })
  const { cookie, 'user-agent': browser } = request.headers
  if (cookie !== undefined) headers.set('cookie', cookie)
  if (browser !== undefined) headers.set('user-agent', browser.slice(0, mostLettersOfBrowser))
  return headers
}
