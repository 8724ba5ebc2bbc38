import type { FastifyRequest } from 'fastify'

/** What the log keeps of a request: a token in an address is as good as the invitation, so it is left out. */
export const loggedRequest = ({ method, url, ip }: Pick<FastifyRequest, 'method' | 'url' | 'ip'>) => ({
  method,
  url: url.replace(/\/(invitations|join)\/[^/?#]+/g, '/$1/...'),
  remoteAddress: ip,
})
