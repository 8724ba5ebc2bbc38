import type { FastifyRequest } from 'fastify'

/** What the log keeps of a request: a token in an address is as good as its link, so it is left out. */
export const loggedRequest = ({ method, url, ip }: Pick<FastifyRequest, 'method' | 'url' | 'ip'>) => ({
  method,
  url: url.replace(/\/(invitations|join|resets|new-password)\/[^/?#]+/g, '/$1/...'),
  remoteAddress: ip,
})
