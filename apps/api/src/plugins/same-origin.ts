import { hostname, networkInterfaces } from 'node:os'
import { RoomError } from '@fryward/room'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

/**
 * Refuses writes that another site sends through a signed-in browser (scheme, host and port are those of the request, or
 * of the public address where a proxy in front ends TLS), and hosts that this server does not answer to
 * (a page that points its own name at this machine). Tokens would break replay from a phone that was offline.
 */
export const sameOrigin = fp(
  async (app: FastifyInstance, { publicUrl }: { publicUrl: string }) => {
    const { hostname: publicHost, origin: publicOrigin } = new URL(publicUrl)
    // Names found to be ours, with the ports they were asked by; few enough that a stranger cannot fill memory.
    const ours = new Set<string>()
    app.addHook('onRequest', (request, _reply, done) => {
      const host = request.headers.host ?? ''
      if (!ours.has(host)) {
        const name = nameOfHost(host)
        if (!isOurName(name, publicHost))
          throw new RoomError(
            'not_allowed',
            `This server does not answer to the name "${name}". Set PUBLIC_URL to the address that people use.`,
          )
        if (ours.size < mostRemembered) ours.add(host)
      }
      if (request.method === 'GET' || request.method === 'HEAD' || request.method === 'OPTIONS') return done()
      const site = request.headers['sec-fetch-site']
      const origin = request.headers.origin
      const isForeignOrigin =
        origin !== undefined && origin !== publicOrigin && origin !== `${request.protocol}://${host}`
      if (isForeignOrigin || site === 'cross-site' || site === 'same-site')
        throw new RoomError(
          'not_allowed',
          'This request came from another site and was refused. Open Fryward itself and do it there.',
        )
      done()
    })
  },
  { name: 'same-origin' },
)

const mostRemembered = 100

const nameOfHost = (host: string): string =>
  URL.canParse(`http://${host}`) ? new URL(`http://${host}`).hostname : host

function isOurName(name: string, publicHost: string): boolean {
  if (name === publicHost || name === 'localhost' || name === '127.0.0.1' || name === '[::1]') return true
  const own = hostname().toLowerCase()
  if (name === own || name === `${own}.local`) return true
  return Object.values(networkInterfaces()).some((addresses) =>
    addresses?.some((address) => address.address === name || `[${address.address}]` === name),
  )
}
