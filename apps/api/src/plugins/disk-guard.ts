import { RoomError } from '@fryward/room'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'
import type { Disk } from '../disk.ts'

export const diskFull =
  'The disk of the server is full. Nothing was saved; reading goes on. Make room on the disk, then do this again.'

/**
 * Refuses writes while the disk is nearly full: a database that runs out of it stops answering reads too. Signing in goes
 * on, so that people can read.
 */
export const diskGuard = fp(
  async (app: FastifyInstance, { disk }: { disk: Disk | null }) => {
    if (!disk) return
    const refuseWhereFull = async () => {
      if ((await disk.look())?.state === 'full') throw new RoomError('disk_full', diskFull)
    }
    app.addHook('onRequest', ({ method, url }, _reply, done) => {
      if (method === 'GET' || method === 'HEAD' || !url.startsWith('/api/v1/')) done()
      else refuseWhereFull().then(() => done(), done)
    })
  },
  { name: 'disk-guard' },
)
