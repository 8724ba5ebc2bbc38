import type { Actor, Context } from '@fryward/room'
import { RoomError } from '@fryward/room'
import { personHeader } from '@fryward/shared'
import type { Database } from '@fryward/store'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'
import { recently } from '../recently.ts'
import type { Auth } from '../sign-in/auth.ts'
import { type Door, openDoor } from '../sign-in/door.ts'
import { knownBrowser } from '../sign-in/known-browser.ts'
import { headersOf } from '../sign-in/pass-to-library.ts'

type Person = Extract<Actor, { kind: 'person' }>

declare module 'fastify' {
  interface FastifyInstance {
    /** Who asks, from the session cookie; not_signed_in when nobody does. */
    personOf: (request: FastifyRequest) => Promise<Person>
    contextFor: (actor: Actor) => Context
    /** Nobody is taken for signed in by what was looked up before. */
    forgetSessions: () => void
    doorOf: (request: FastifyRequest, reply: FastifyReply) => Door
  }
}

export type SessionOptions = { auth: Auth; database: Database; now: () => string; publicUrl: string; secret: string }

/** The person behind a request, and the door where people come in and go out. */
export const session = fp(
  async (app: FastifyInstance, { auth, database, now, publicUrl, secret }: SessionOptions) => {
    const contextFor = (actor: Actor): Context => ({ database, actor, now: now() })
    app.decorate('contextFor', contextFor)
    const recent = recently<Person>()
    const known = knownBrowser({ secret, isSecure: publicUrl.startsWith('https:') })
    const lookUp = async (request: FastifyRequest): Promise<Person> => {
      const found = await auth.api.getSession({ headers: headersOf(request) })
      if (!found)
        throw new RoomError('not_signed_in', 'Sign in first; what you have typed stays on this phone until then.')
      return { kind: 'person', userId: found.user.id, name: found.user.name, sessionId: found.session.id }
    }
    app.decorate('personOf', async (request: FastifyRequest) => {
      const person = await recent.find(request.headers.cookie ?? '', () => lookUp(request))
      const meantFor = request.headers[personHeader]
      // A page left open may still send for whoever was signed in before: nothing is booked in another's name.
      if (meantFor !== undefined && meantFor !== person.userId)
        throw new RoomError('not_signed_in', `${person.name} is signed in here. Sign in as yourself to send this.`)
      return person
    })
    app.decorate('forgetSessions', recent.forgetAll)
    app.decorate('doorOf', (request: FastifyRequest, reply: FastifyReply) =>
      openDoor({
        ...{ auth, database, request, reply, publicUrl, known, secret },
        contextFor: () => contextFor({ kind: 'system', job: 'door' }),
        forgetSessions: recent.forgetAll,
      }),
    )
  },
  { name: 'session' },
)
