import httpProxy from '@fastify/http-proxy'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'

const waiting = `<!doctype html><meta charset="utf-8"><meta name="viewport" content="width=device-width"><meta http-equiv="refresh" content="3">
<title>Fryward</title><body style="font:1.2rem/1.5 sans-serif;margin:15vh auto;max-width:28rem;padding:0 1rem">
<p><strong>The dashboard is not up yet.</strong></p><p>This page tries again every three seconds. If it stays, look at the terminal that Fryward was started in.</p>`

/** Everything that is not the API is a page of the dashboard, passed on to its inner port. */
export const pages = fp(
  async (app: FastifyInstance, { webUrl }: { webUrl: string }) => {
    await app.register(httpProxy, {
      upstream: webUrl,
      prefix: '/',
      // Only `npm run dev` talks to its pages by web socket.
      websocket: process.env.NODE_ENV === 'development',
      // Pages are only ever read; a write to a page is somebody trying doors.
      httpMethods: ['GET', 'HEAD'],
      // An address that the API does not have is answered here; the dashboard has no page under its name.
      preHandler: async (request, reply) => {
        if (request.url.startsWith('/api/')) reply.callNotFound()
      },
      replyOptions: {
        onError: (reply) =>
          reply
            .code(503)
            .header('retry-after', '3')
            .type('text/html')
            .serializer((text: string) => text)
            .send(waiting),
      },
    })
  },
  { name: 'pages' },
)
