import { listenToRooms } from '@fryward/store'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

/** Who wants to know that a room has moved on; null where notices may have been missed, so that any may have. */
export type HearsOfRooms = (roomId: string | null) => void

declare module 'fastify' {
  interface FastifyInstance {
    hearOfRooms: (hears: HearsOfRooms) => void
    /** A session has ended, in whichever process; whose, nobody says. */
    hearOfEndedSessions: (hears: () => void) => void
  }
}

/** One listening connection for all that this process has to know of rooms moving on and of sessions that end. */
export const roomNotices = fp(
  async (app: FastifyInstance, { connectionString }: { connectionString: string }) => {
    const hearers: HearsOfRooms[] = []
    const tell = (roomId: string | null) => {
      for (const hears of hearers) hears(roomId)
    }
    const hearersOfSessions: (() => void)[] = []
    const endSessions = () => {
      for (const hears of hearersOfSessions) hears()
    }
    const listener = listenToRooms({
      connectionString,
      onNotice: ({ roomId }) => tell(roomId),
      onSessionEnded: endSessions,
      onReconnect: () => {
        endSessions()
        tell(null)
      },
      onError: (error) => app.log.warn({ err: error }, 'lost the listening connection; trying again'),
    })
    app.addHook('preClose', () => listener.close())
    app.decorate('hearOfEndedSessions', (hears: () => void) => void hearersOfSessions.push(hears))
    app.decorate('hearOfRooms', (hears: HearsOfRooms) => void hearers.push(hears))
  },
  { name: 'room-notices' },
)
