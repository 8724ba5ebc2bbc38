import type { IncomingHttpHeaders } from 'node:http'
import type { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import httpProxy from '@fastify/http-proxy'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'
import { sendPacked } from '../answer.ts'
import { policyFor } from '../page-policy.ts'

const isDevelopment = process.env.NODE_ENV === 'development'
const plain = { 'accept-encoding': 'identity', 'if-none-match': undefined, 'if-modified-since': undefined }

/** What a browser shows, as against what a page's script fetches. */
const isPage = ({ headers }: { headers: IncomingHttpHeaders }): boolean =>
  !isDevelopment && (headers.accept ?? '').includes('text/html')

async function sendPage(
  request: Pick<FastifyRequest, 'headers' | 'log'>,
  reply: FastifyReply,
  stream: Readable,
): Promise<void> {
  try {
    const html = await buffer(stream)
    reply.header('content-security-policy', policyFor(html.toString()))
    reply.removeHeader('content-length').removeHeader('etag')
    await sendPacked(request, reply, html)
  } catch (error) {
    request.log.warn({ err: error }, 'a page broke off')
    reply.raw.destroy()
  }
}

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
      websocket: isDevelopment,
      // Pages are only ever read; a write to a page is somebody trying doors.
      httpMethods: ['GET', 'HEAD'],
      // An address that the API does not have is answered here; the dashboard has no page under its name.
      preHandler: async (request, reply) => {
        if (request.url.startsWith('/api/')) reply.callNotFound()
      },
      replyOptions: {
        // A page is looked through, so it comes whole and unzipped; with a part of it kept by the browser, the policy would
        // be of one build and the page of another.
        rewriteRequestHeaders: (request, headers) => (isPage(request) ? { ...headers, ...plain } : headers),
        onResponse: (request, reply, response) => {
          const { stream } = response as unknown as { stream: Readable }
          if (!isPage(request) || !String(reply.getHeader('content-type')).includes('text/html'))
            return reply.send(stream)
          void sendPage(request, reply as unknown as FastifyReply, stream)
        },
        onError: (reply) =>
          reply
            .code(503)
            .header('retry-after', '3')
            .header('content-security-policy', policyFor(waiting))
            .type('text/html')
            .serializer((text: string) => text)
            .send(waiting),
      },
    })
  },
  { name: 'pages' },
)
