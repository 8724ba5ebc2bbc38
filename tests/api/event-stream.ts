import { type RoomEvent, RoomEventSchema, signedOutEvent } from '@fryward/shared'
import type { Person, World } from '../support/world.ts'

/** One phone that listens to a room over a real connection. */
export type EventStream = {
  status: number
  /** Every event so far, in the order of arrival. */
  events: { id: string; event: RoomEvent }[]
  /** Waits until `isThere` holds of the events. */
  until: (isThere: (events: EventStream['events']) => boolean) => Promise<void>
  /** Whether it said that the session is over. */
  isSignedOut: () => boolean
  /** Waits until the server ends the stream. */
  ended: () => Promise<void>
  close: () => void
}

// A busy machine is no fault of ours.
const patienceMs = 30_000

/** The server's own address on this machine, listening once it is asked for. */
export async function listen({ app }: World): Promise<string> {
  const known = app.server.address()
  if (known === null || typeof known === 'string') return app.listen({ host: '127.0.0.1', port: 0 })
  return `http://127.0.0.1:${known.port}`
}

export async function openStream({
  address,
  person,
  roomId,
  lastEventId,
}: {
  address: string
  person: Person | null
  roomId: string
  lastEventId?: string | number
}): Promise<EventStream> {
  const abort = new AbortController()
  const answer = await fetch(`${address}/api/v1/rooms/${roomId}/events`, {
    signal: abort.signal,
    headers: {
      ...(person ? { cookie: person.cookie } : {}),
      ...(lastEventId === undefined ? {} : { 'last-event-id': String(lastEventId) }),
    },
  })
  const events: EventStream['events'] = []
  const watchers = new Set<() => void>()
  let isOver = false
  const tell = () => {
    for (const watcher of watchers) watcher()
  }
  let isSignedOut = false
  const hear = (event: EventStream['events'][number] | null) => {
    if (event) events.push(event)
    else isSignedOut = true
    tell()
  }
  const reading = answer.ok ? read(answer, hear) : answer.body?.cancel()
  void Promise.resolve(reading)
    .catch(() => undefined) // we hung up ourselves, or the connection broke: over either way
    .then(() => {
      isOver = true
      tell()
    })
  const wait = (isThere: () => boolean, what: string) =>
    new Promise<void>((resolve, reject) => {
      const timer = setTimeout(() => {
        watchers.delete(check)
        reject(new Error(`${what} did not come; ${events.length} events came`))
      }, patienceMs)
      const check = () => {
        if (!isThere()) return
        clearTimeout(timer)
        watchers.delete(check)
        resolve()
      }
      watchers.add(check)
      check()
    })
  return {
    status: answer.status,
    events,
    isSignedOut: () => isSignedOut,
    until: (isThere) => wait(() => isThere(events), 'The awaited event'),
    ended: () => wait(() => isOver, 'The end of the stream'),
    close: () => abort.abort(),
  }
}

/** @param found null where it is not an event of the room but the end of the session. */
async function read(answer: Response, found: (event: EventStream['events'][number] | null) => void): Promise<void> {
  const decoder = new TextDecoder()
  let text = ''
  for await (const chunk of answer.body ?? []) {
    text += decoder.decode(chunk, { stream: true })
    for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
      const lines = text.slice(0, end).split('\n')
      text = text.slice(end + 2)
      const value = (name: string) => lines.find((line) => line.startsWith(`${name}: `))?.slice(name.length + 2)
      const [id, data] = [value('id'), value('data')]
      if (value('event') === signedOutEvent) found(null)
      if (id !== undefined && data !== undefined) found({ id, event: RoomEventSchema.parse(JSON.parse(data)) })
    }
  }
}
