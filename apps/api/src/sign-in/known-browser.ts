import { createHash, createHmac, timingSafeEqual } from 'node:crypto'
import type { FastifyReply, FastifyRequest } from 'fastify'

// The longest that browsers keep a cookie.
const keptSeconds = 400 * 86_400

/**
 * A mark that a browser gets when somebody has signed in with it, one for each account: while strangers guess at the
 * account, whoever has the mark still gets in. It opens nothing by itself.
 */
export function knownBrowser({ secret, isSecure }: { secret: string; isSecure: boolean }) {
  const nameFor = (email: string) => `fryward.known_${createHash('sha256').update(email).digest('hex').slice(0, 12)}`
  const markFor = (email: string) => createHmac('sha256', secret).update(`known browser ${email}`).digest('base64url')
  return {
    has({ headers }: FastifyRequest, email: string): boolean {
      const name = `${nameFor(email)}=`
      const cookies = (headers.cookie ?? '').split(';').map((cookie) => cookie.trim())
      const given = Buffer.from(cookies.find((cookie) => cookie.startsWith(name))?.slice(name.length) ?? '')
      const wanted = Buffer.from(markFor(email))
      return given.length === wanted.length && timingSafeEqual(given, wanted)
    },
    mark(reply: FastifyReply, email: string): void {
      const parts = [
        `${nameFor(email)}=${markFor(email)}`,
        `Max-Age=${keptSeconds}`,
        'Path=/api/auth/sign-in',
        'HttpOnly',
        'SameSite=Lax',
      ]
      reply.header('set-cookie', [...parts, ...(isSecure ? ['Secure'] : [])].join('; '))
    },
  }
}
