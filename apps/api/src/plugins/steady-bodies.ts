import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

// A phone on the edge of a network still sends 2 kB a second (from memory: EDGE gives ten times that); less is nobody
// who means to finish.
const leastBytesInTurn = 64 * 1024

/** Cuts off whoever announces a body and then leaves this server waiting for it, and drops what comes of who is gone. */
export const steadyBodies = fp(
  async (app: FastifyInstance, { patienceMs }: { patienceMs: number }) => {
    // Nobody is there to be counted, asked or answered any more.
    app.addHook('onRequest', async ({ raw }, reply) => {
      if (raw.socket.remoteAddress === undefined && raw.socket.destroyed) reply.hijack()
    })
    app.addHook('onRequest', async ({ raw, headers }) => {
      if (headers['content-length'] === undefined && headers['transfer-encoding'] === undefined) return
      let heard = raw.socket.bytesRead
      const turn = setInterval(() => {
        if (raw.socket.bytesRead - heard < leastBytesInTurn) raw.socket.destroy()
        heard = raw.socket.bytesRead
      }, patienceMs)
      turn.unref()
      const stop = () => clearInterval(turn)
      raw.once('end', stop).once('close', stop)
    })
  },
  { name: 'steady-bodies' },
)
