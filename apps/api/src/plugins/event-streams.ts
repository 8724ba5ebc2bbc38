import { once } from 'node:events'
import { type Context, RoomError } from '@fryward/room'
import { maximumInteger, type RoomEvent, signedOutEvent } from '@fryward/shared'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import fp from 'fastify-plugin'

/** A room's events: where a new listener starts, and what came after a revision. */
export type Feed = {
  roomId: string
  newest: number
  after: (ctx: Context, revision: number) => Promise<RoomEvent[]>
}

declare module 'fastify' {
  interface FastifyInstance {
    /** Answers with a feed's events for as long as the other side listens. */
    openEventStream: (request: FastifyRequest, reply: FastifyReply, feed: Feed) => FastifyReply
  }
}

export type EventStreamsOptions = {
  /** How long one that takes in nothing is waited for; twice in that time each hears that it is still listened to. */
  patienceMs: number
}

/** One open stream. `sent` is the last revision that went out; one round of sending at a time, so that order holds. */
type Stream = {
  feed: Feed
  request: FastifyRequest
  reply: FastifyReply
  sent: number
  isSending: boolean
  /** Something came while a round was under way. */
  isBehind: boolean
}

// A person has a phone and a desk with a few tabs each; behind one address sit the people of one house.
const mostOfPerson = 12
const mostOfAddress = 48

/**
 * Live events of rooms. Revisions commit in order, so a stream only ever asks "what came after the last I sent": on a
 * notice, on a resumed connection, after the listening connection was lost, all the same.
 */
export const eventStreams = fp(
  async (app: FastifyInstance, { patienceMs }: EventStreamsOptions) => {
    const streams = new Set<Stream>()
    const close = (stream: Stream) => {
      streams.delete(stream)
      const { raw } = stream.reply
      // What waits to be read by one that reads nothing is dropped with its connection.
      if (raw.writableNeedDrain) raw.destroy()
      else raw.end()
    }
    const catchUp = async (stream: Stream) => {
      stream.isBehind = true
      if (stream.isSending) return
      stream.isSending = true
      try {
        while (stream.isBehind) {
          stream.isBehind = false
          await sendNew(app, stream, patienceMs)
        }
      } catch (error) {
        // Taken out of the room, signed out, the database is away, or nobody reads: a phone reconnects and is told.
        app.log.debug({ err: error }, 'event stream closed')
        if (error instanceof RoomError && error.code === 'not_signed_in') stream.reply.raw.write(signedOut)
        close(stream)
      } finally {
        stream.isSending = false
      }
    }
    const catchUpAll = (those: Iterable<Stream>) => {
      for (const stream of those) void catchUp(stream)
    }
    app.hearOfRooms((roomId) =>
      catchUpAll(roomId === null ? streams : [...streams].filter(({ feed }) => feed.roomId === roomId)),
    )
    app.hearOfEndedSessions(() => {
      app.forgetSessions()
      catchUpAll(streams)
    })
    const heartbeat = setInterval(() => {
      for (const { isSending, reply } of streams) if (!isSending) reply.raw.write(': still here\n\n')
      catchUpAll(streams)
    }, patienceMs / 2)
    app.addHook('preClose', async () => {
      clearInterval(heartbeat)
      streams.forEach(close)
    })

    app.decorate('openEventStream', (request: FastifyRequest, reply: FastifyReply, feed: Feed) => {
      assertRoomFor(request, streams)
      const sent = Math.min(resumeFrom(request.headers['last-event-id']) ?? feed.newest, feed.newest)
      reply.hijack()
      reply.raw.writeHead(200, { ...streamHeaders, ...headersSetBy(reply) })
      reply.raw.write('retry: 2000\n\n')
      const stream: Stream = { feed, request, reply, sent, isSending: false, isBehind: false }
      streams.add(stream)
      request.raw.on('close', () => streams.delete(stream))
      void catchUp(stream)
      return reply
    })
  },
  { name: 'event-streams', dependencies: ['room-notices'] },
)

function assertRoomFor(request: FastifyRequest, streams: ReadonlySet<Stream>): void {
  const others = [...streams].map((stream) => stream.request)
  const ofPerson = others.filter(({ person }) => person?.userId === request.person?.userId).length
  const ofAddress = others.filter(({ ip }) => ip === request.ip).length
  if (ofPerson >= mostOfPerson || ofAddress >= mostOfAddress)
    throw new RoomError(
      'too_many_requests',
      'Too many pages listen to rooms from here already. Close some of them; this one goes on without live news.',
    )
}

/** The last that a page hears whose session has ended: it need not find out by itself. */
const signedOut = `event: ${signedOutEvent}\ndata: {}\n\n`

const streamHeaders = {
  'content-type': 'text/event-stream; charset=utf-8',
  'cache-control': 'no-store',
  connection: 'keep-alive',
  'x-accel-buffering': 'no',
}
const headersSetBy = (reply: FastifyReply) =>
  Object.fromEntries(Object.entries(reply.getHeaders()).filter(([, value]) => value !== undefined)) as Record<
    string,
    string
  >

async function sendNew(app: FastifyInstance, stream: Stream, patienceMs: number): Promise<void> {
  // Asked anew each time: a session that was signed out meanwhile hears nothing more.
  const ctx = app.contextFor(await app.personOf(stream.request))
  for (;;) {
    const events = await stream.feed.after(ctx, stream.sent)
    if (events.length === 0) return
    for (const event of events) {
      await write(stream, `id: ${event.revision}\ndata: ${JSON.stringify(event)}\n\n`, patienceMs)
      stream.sent = event.revision
    }
  }
}

/** Waits until the other side has taken in what was sent before, so that nothing piles up here. */
async function write({ reply: { raw } }: Stream, text: string, patienceMs: number): Promise<void> {
  if (raw.destroyed || raw.writableEnded) throw new Error('the connection is gone')
  if (!raw.write(text)) await once(raw, 'drain', { signal: AbortSignal.timeout(patienceMs) })
}

function resumeFrom(header: string | string[] | undefined): number | null {
  if (typeof header !== 'string' || !/^\d{1,10}$/.test(header)) return null
  return Number(header) <= maximumInteger ? Number(header) : null
}
