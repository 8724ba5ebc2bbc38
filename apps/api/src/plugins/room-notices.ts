import { listenToRooms } from '@fryward/store'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

/** Who wants to know that a room has moved on; null where notices may have been missed, so that any may have. */
export type HearsOfRooms = (roomId: string | null) => void

declare module 'fastify' {
  interface FastifyInstance {
    hearOfRooms: (hears: HearsOfRooms) => void
  }
}

/** One listening connection for all that this process has to know of rooms moving on. */
export const roomNotices = fp(
  async (app: FastifyInstance, { connectionString }: { connectionString: string }) => {
    const hearers: HearsOfRooms[] = []
    const tell = (roomId: string | null) => {
      for (const hears of hearers) hears(roomId)
    }
    const listener = listenToRooms({
      connectionString,
      onNotice: ({ roomId }) => tell(roomId),
      onReconnect: () => tell(null),
      onError: (error) => app.log.warn({ err: error }, 'lost the listening connection; trying again'),
    })
    app.addHook('preClose', () => listener.close())
    app.decorate('hearOfRooms', (hears: HearsOfRooms) => void hearers.push(hears))
  },
  { name: 'room-notices' },
)
