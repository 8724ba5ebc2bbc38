import { type Actor, deviceByToken, RoomError } from '@fryward/room'
import type { Database } from '@fryward/store'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'
import { recently } from '../recently.ts'

type Device = Extract<Actor, { kind: 'device' }>

declare module 'fastify' {
  interface FastifyInstance {
    /** What asks, from its bearer token; not_signed_in where none comes or it opens nothing. */
    deviceOf: (request: FastifyRequest) => Promise<Device>
  }
}

/** The device behind a request. A token that is revoked, by whichever process, is refused within a second. */
export const devices = fp(
  async (app: FastifyInstance, { database }: { database: Database }) => {
    const recent = recently<Device>()
    app.decorate('deviceOf', async ({ headers }: FastifyRequest) => {
      const token = /^Bearer ([\w-]{16,100})$/.exec(headers.authorization ?? '')?.[1]
      if (token === undefined)
        throw new RoomError('not_signed_in', 'Bring the token of the device: "Authorization: Bearer" and the token.')
      return recent.find(token, () => deviceByToken({ ctx: { database }, token }))
    })
  },
  { name: 'devices' },
)
