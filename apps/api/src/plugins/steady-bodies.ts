import type { IncomingMessage } from 'node:http'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

// A phone on the edge of a network still sends 2 kB a second (from memory: EDGE gives ten times that); less is nobody
// who means to finish.
const leastBytesInTurn = 64 * 1024

/** Cuts off whoever announces a body and then leaves this server waiting for it, and drops what comes of who is gone. */
export const steadyBodies = fp(
  async (app: FastifyInstance, { patienceMs }: { patienceMs: number }) => {
    // Nobody is there to be counted, asked or answered any more.
    app.addHook('onRequest', ({ raw }, reply, done) => {
      if (raw.socket.remoteAddress === undefined && raw.socket.destroyed) reply.hijack()
      done()
    })
    app.addHook('onRequest', ({ raw, headers }, _reply, done) => {
      if (headers['content-length'] !== undefined || headers['transfer-encoding'] !== undefined) watch(raw)
      done()
    })
    const watch = (raw: IncomingMessage) => {
      let heard = raw.socket.bytesRead
      const turn = setInterval(() => {
        if (raw.socket.bytesRead - heard < leastBytesInTurn) raw.socket.destroy()
        heard = raw.socket.bytesRead
      }, patienceMs)
      turn.unref()
      const stop = () => clearInterval(turn)
      raw.once('end', stop).once('close', stop)
    }
  },
  { name: 'steady-bodies' },
)
