import helmet from '@fastify/helmet'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

// What helmet works out anew for every page, once for answers that are data: nothing of them is ever run or framed.
const dataHeaders = {
  'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
  'cross-origin-resource-policy': 'same-origin',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
}
// A year, as helmet has it.
const strictTransport = { 'strict-transport-security': 'max-age=31536000; includeSubDomains' }

/** Headers that browsers guard by: helmet's on pages, a fixed few on the API's routes (which say `helmet: false`). */
export const safeHeaders = fp(
  async (app: FastifyInstance, { isStrictTransport }: { isStrictTransport: boolean }) => {
    await app.register(helmet, { contentSecurityPolicy: contentSecurityPolicy(), hsts: isStrictTransport })
    const headers = isStrictTransport ? { ...dataHeaders, ...strictTransport } : dataHeaders
    app.addHook('onRequest', (request, reply, done) => {
      if (request.url.startsWith('/api/')) reply.headers(headers)
      done()
    })
  },
  { name: 'safe-headers' },
)

const isDevelopment = process.env.NODE_ENV === 'development'

// For what a page loads and for `npm run dev`, which writes scripts and styles as it goes; each page has its own
// (page-policy.ts).
const contentSecurityPolicy = () => ({
  useDefaults: false,
  directives: {
    defaultSrc: ["'self'"],
    scriptSrc: ["'self'", ...(isDevelopment ? ["'unsafe-inline'", "'unsafe-eval'"] : [])],
    styleSrc: ["'self'", ...(isDevelopment ? ["'unsafe-inline'"] : [])],
    imgSrc: ["'self'", 'data:', 'blob:'],
    fontSrc: ["'self'", 'data:'],
    connectSrc: ["'self'"],
    objectSrc: ["'none'"],
    baseUri: ["'self'"],
    formAction: ["'self'"],
    frameAncestors: ["'none'"],
  },
})
