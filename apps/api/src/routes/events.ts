import { currentRevision, listEvents } from '@fryward/room'
import { eventsPath, IdSchema, maximumInteger } from '@fryward/shared'
import { listenToRooms } from '@fryward/store'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import { z } from 'zod'

const heartbeatMs = 15_000

/** One open stream. `sent` is the last revision that went out; sending is serialised so that order holds. */
type Stream = {
  roomId: string
  request: FastifyRequest
  reply: FastifyReply
  sent: number
  sending: Promise<void>
}

const ParamsSchema = z.strictObject({ roomId: IdSchema })

/**
 * Live events of a room. Revisions commit in order, so a stream only ever asks "what came after the last I sent":
 * on a notice, on a resumed connection, after the listening connection was lost, all the same.
 */
export async function registerEvents(
  app: FastifyInstance,
  { connectionString }: { connectionString: string },
): Promise<void> {
  const streams = new Set<Stream>()
  const catchUp = (stream: Stream) => {
    stream.sending = stream.sending
      .then(() => sendNew(app, stream))
      .catch((error: unknown) => {
        // Taken out of the room, signed out, or the database is away: the phone reconnects and is told properly.
        app.log.debug({ err: error }, 'event stream closed')
        close(stream)
      })
  }
  const close = (stream: Stream) => {
    streams.delete(stream)
    stream.reply.raw.end()
  }
  const listener = listenToRooms({
    connectionString,
    onNotice: ({ roomId }) => [...streams].filter((stream) => stream.roomId === roomId).forEach(catchUp),
    onReconnect: () => streams.forEach(catchUp),
    onError: (error) => app.log.warn({ err: error }, 'lost the listening connection; trying again'),
  })
  const heartbeat = setInterval(() => {
    for (const stream of streams) {
      stream.reply.raw.write(': still here\n\n')
      catchUp(stream)
    }
  }, heartbeatMs)
  app.addHook('preClose', async () => {
    clearInterval(heartbeat)
    streams.forEach(close)
    await listener.close()
  })

  app.get(
    `/api/v1${eventsPath}`,
    { schema: { hide: true, params: ParamsSchema }, exposeHeadRoute: false },
    async (request, reply) => {
      const { roomId } = ParamsSchema.parse(request.params)
      const person = await app.personOf(request)
      const newest = await currentRevision({ ctx: app.contextFor(person), roomId })
      const sent = Math.min(resumeFrom(request.headers['last-event-id']) ?? newest, newest)
      reply.hijack()
      reply.raw.writeHead(200, { ...streamHeaders, ...securityHeaders(reply) })
      reply.raw.write(`retry: 2000\n\n`)
      const stream: Stream = { roomId, request, reply, sent, sending: Promise.resolve() }
      streams.add(stream)
      request.raw.on('close', () => streams.delete(stream))
      catchUp(stream)
      return reply
    },
  )
}

const streamHeaders = {
  'content-type': 'text/event-stream; charset=utf-8',
  'cache-control': 'no-store',
  connection: 'keep-alive',
  'x-accel-buffering': 'no',
}
const securityHeaders = (reply: FastifyReply) =>
  Object.fromEntries(Object.entries(reply.getHeaders()).filter(([, value]) => value !== undefined)) as Record<
    string,
    string
  >

async function sendNew(app: FastifyInstance, stream: Stream): Promise<void> {
  // Asked anew each time: a session that was signed out meanwhile hears nothing more.
  const ctx = app.contextFor(await app.personOf(stream.request))
  for (;;) {
    const events = await listEvents({ ctx, roomId: stream.roomId, afterRevision: stream.sent })
    if (events.length === 0) return
    for (const event of events) {
      stream.reply.raw.write(`id: ${event.revision}\ndata: ${JSON.stringify(event)}\n\n`)
      stream.sent = event.revision
    }
  }
}

function resumeFrom(header: string | string[] | undefined): number | null {
  if (typeof header !== 'string' || !/^\d{1,10}$/.test(header)) return null
  return Number(header) <= maximumInteger ? Number(header) : null
}
