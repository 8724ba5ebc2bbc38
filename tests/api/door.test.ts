import { once } from 'node:events'
import { connect, type Socket } from 'node:net'
import { createApi } from '@fryward/api'
import type { FastifyInstance } from 'fastify'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openWorld, type Person, type World } from '../support/world.ts'
import { type EventStream, listen, openStream } from './event-stream.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { routeIds, routeOf, urlOf } from './send.ts'

let world: World
let full: FullRoom
let neighbour: FullRoom
let address: URL

beforeAll(async () => {
  world = await openWorld()
  neighbour = await openFullRoom(world, { name: 'Next door' })
  full = await openFullRoom(world)
  address = new URL(await listen(world))
})
afterAll(() => world.close())

type Asked = { method?: string; url: string; person?: Person | null; headers?: Record<string, string> }

/** Sends the head of a request that announces a body, and no byte of that body; gives the head of what comes back. */
async function announce({ method = 'POST', url, person, headers = {} }: Asked): Promise<string> {
  const socket = connect(Number(address.port), address.hostname)
  const lines = Object.entries({ host: address.host, ...(person ? { cookie: person.cookie } : {}), ...headers })
  socket.write(`${method} ${url} HTTP/1.1\r\n${lines.map(([name, value]) => `${name}: ${value}\r\n`).join('')}\r\n`)
  const answer = await new Promise<string>((resolve) => {
    socket.once('data', (data) => resolve(data.toString()))
    socket.once('close', () => resolve('closed'))
  })
  socket.destroy()
  return answer
}
const statusIn = (answer: string) => Number(/^HTTP\/1\.1 (\d+)/.exec(answer)?.[1])

const takesBody = routeIds.filter((id) => routeOf(id).takes.length > 0)
const paramsOf = (id: (typeof routeIds)[number], roomId: string) =>
  Object.fromEntries(
    [...routeOf(id).path.matchAll(/:(\w+)/g)].map(([, name]) => [name!, name === 'roomId' ? roomId : full.pair.id]),
  )

describe('before a byte of the body has come', () => {
  const asked = (id: (typeof routeIds)[number], person: Person | null, roomId = full.roomId) =>
    announce({
      method: routeOf(id).method,
      url: urlOf(id, paramsOf(id, roomId)),
      person,
      headers: { 'content-type': routeOf(id).takes[0]!, 'content-length': String(routeOf(id).mostBytes) },
    })

  test.each(takesBody.filter((id) => routeOf(id).permission !== 'anyone'))(
    '%s asks a stranger to sign in',
    async (id) => {
      expect(statusIn(await asked(id, null))).toBe(401)
    },
  )

  test.each(takesBody.filter((id) => routeOf(id).path.startsWith('/rooms/:roomId')))(
    '%s knows no such room for a neighbour, and says to a viewer who may',
    async (id) => {
      expect(statusIn(await asked(id, neighbour.owner))).toBe(404)
      if (routeOf(id).permission !== 'read') expect(statusIn(await asked(id, full.viewer))).toBe(403)
    },
  )

  test('an address without a route is said to be none', async () => {
    const headers = { 'content-type': 'image/jpeg', 'content-length': '14000000' }
    for (const url of ['/api/v1/nothing', '/api/auth/update-user', '/nothing', '/api/v1/health'])
      expect([url, statusIn(await announce({ url, headers }))]).toEqual([url, 404])
  })

  test('a body larger than the route takes is refused by what it announces', async () => {
    const url = urlOf('claimServer')
    const headers = { 'content-type': 'application/json', 'content-length': '9000' }
    expect(statusIn(await announce({ url, headers }))).toBe(413)
  })

  test.each(['image/png', 'image/jpeg', 'application/octet-stream', 'text/plain'])(
    'no open route reads %s',
    async (type) => {
      for (const id of takesBody.filter((each) => routeOf(each).permission === 'anyone')) {
        const url = urlOf(id, { token: 'x'.repeat(32) })
        const headers = { 'content-type': type, 'content-length': '5000' }
        expect([id, statusIn(await announce({ url, headers }))]).toEqual([id, 415])
      }
    },
  )
})

describe('whoever keeps a server waiting', () => {
  // A server that loses its patience soon, apart: nothing else here has to be quicker than that.
  const patienceMs = 300
  let hasty: FastifyInstance
  let port: number
  beforeAll(async () => {
    hasty = await createApi({
      database: world.database,
      authSecret: 'a secret for tests only, long enough for the schema',
      publicUrl: 'http://localhost:3000',
      version: 'test',
      patienceMs,
    })
    port = Number(new URL(await hasty.listen({ host: '127.0.0.1', port: 0 })).port)
  })
  afterAll(() => hasty.close())

  const opened = (text: string): Socket => {
    const socket = connect(port, '127.0.0.1')
    socket.on('error', () => undefined) // being cut off is what is waited for
    socket.write(text)
    return socket
  }
  const isCutOff = (socket: Socket) =>
    new Promise<boolean>((resolve) => socket.resume().once('close', () => resolve(true)))
  const head = (length: number) =>
    `POST /api/v1/claim HTTP/1.1\r\nhost: localhost:3000\r\ncontent-type: application/json\r\ncontent-length: ${length}\r\n\r\n`

  test('with half a body is cut off', async () => {
    expect(await isCutOff(opened(`${head(200)}{"code":`))).toBe(true)
  })

  test('by sending a letter now and then is cut off too', async () => {
    const socket = opened(`${head(4000)}{"code":"`)
    const drip = setInterval(() => socket.write('x'), patienceMs / 5)
    expect(await isCutOff(socket)).toBe(true)
    clearInterval(drip)
    // Not because all of it had come.
    expect(socket.bytesWritten).toBeLessThan(4000)
  })

  test('with a body that was refused is cut off too', async () => {
    const url = urlOf('addPhoto', { roomId: full.roomId })
    const text = `POST ${url} HTTP/1.1\r\nhost: localhost:3000\r\ncontent-type: image/png\r\ncontent-length: 4000000\r\n\r\n`
    expect(await isCutOff(opened(text))).toBe(true)
  })

  test('to send it events, and never reads, is cut off, and whoever reads gets every one', async () => {
    const rows = 4000
    await world.database.pool.query(
      `INSERT INTO audit_entry (room_id, revision, ordinal, at, actor_name, action, detail)
       SELECT $1, 1000 + number, 1, now(), 'clock', repeat('x', 4000), '{}' FROM generate_series(1, $2) AS number`,
      [full.roomId, rows],
    )
    await world.database.prisma.room.update({ where: { id: full.roomId }, data: { revision: 1000 + rows } })
    const reader = await openStream({
      ...{ address: address.origin, person: full.owner, roomId: full.roomId, lastEventId: 1000 },
    })
    const arrived = once(hasty.server, 'connection')
    const socket = connect(port, '127.0.0.1')
    const [served] = (await arrived) as [Socket]
    socket
      .pause()
      .write(
        `GET ${urlOf('listenToRoom', { roomId: full.roomId })} HTTP/1.1\r\nhost: localhost:3000\r\ncookie: ${full.owner.cookie}\r\nlast-event-id: 1000\r\n\r\n`,
      )
    await once(served, 'close')
    await reader.until((events) => events.length === rows)
    reader.close()
    socket.destroy()
  })
})

describe('events', () => {
  const follow = (person: Person) => openStream({ address: address.origin, person, roomId: full.roomId })

  test('twelve pages of a person hear them; the thirteenth is told, until another is closed', async () => {
    const streams: EventStream[] = []
    for (let pages = 0; pages < 12; pages += 1) streams.push(await follow(full.viewer))
    expect(streams.map(({ status }) => status)).toEqual(Array(12).fill(200))
    expect((await follow(full.viewer)).status).toBe(429)
    expect((await follow(full.standIn)).status).toBe(200)
    streams[0]!.close()
    await streams[0]!.ended()
    await expect.poll(async () => (await follow(full.viewer)).status).toBe(200)
    for (const stream of streams) stream.close()
  })
})

describe('what is sent back', () => {
  const post = (url: string, payload: string, cookie = '') =>
    world.app.inject({
      method: 'POST',
      url,
      headers: { host: 'localhost:3000', 'content-type': 'application/json', ...(cookie ? { cookie } : {}) },
      payload,
    })

  test('says little of a body that says much', async () => {
    const names = Array.from({ length: 4000 }, (_, index) => `unheard-of-${index}-${'x'.repeat(20)}`)
    const body = JSON.stringify(Object.fromEntries(names.map((name) => [name, 1])))
    const answer = await post(urlOf('createTank', { roomId: full.roomId }), body, full.owner.cookie)
    expect(answer.statusCode).toBe(400)
    expect(answer.body.length).toBeLessThan(5000)
    expect(answer.body).toContain('unheard-of-0')
  })

  test('says little of a list that is wrong throughout', async () => {
    const data = { of: 'culture', animals: Array(4000).fill('many'), volumeMl: 1 }
    const body = JSON.stringify({ kind: 'count', subjectId: full.culture.id, data })
    const answer = await post(urlOf('recordFact', { roomId: full.roomId }), body, full.owner.cookie)
    expect(answer.statusCode).toBe(400)
    expect(answer.json().fields.length).toBeLessThanOrEqual(50)
    expect(answer.body.length).toBeLessThan(10_000)
  })

  test('says little of a long address and a long name of a host', async () => {
    const long = 'x'.repeat(6000)
    const answers = [
      await world.app.inject({ url: `/api/v1/${long}`, headers: { host: 'localhost:3000' } }),
      await world.app.inject({ url: `/api/v1/server?${long}=`, headers: { host: 'localhost:3000' } }),
      await world.app.inject({ url: '/api/v1/server', headers: { host: `${long}.example` } }),
    ]
    for (const answer of answers) {
      expect(answer.statusCode).toBeGreaterThanOrEqual(400)
      expect(answer.body.length).toBeLessThan(2000)
    }
  })

  test.each([
    '{"code":{"length":{"toString":""}}}',
    '{"length":{"toString":"","valueOf":""}}',
    'null',
    '"x"',
    '7',
    '[]',
  ])('to the open routes is never an error of ours: %s', async (payload) => {
    for (const id of takesBody.filter((each) => routeOf(each).permission === 'anyone')) {
      const fields = ['code', 'name', 'email', 'password'].map((name) => `"${name}":${payload}`).join(',')
      for (const text of [payload, `{${fields}}`]) {
        const answer = await post(urlOf(id, { token: 'x'.repeat(32) }), text)
        expect(answer.statusCode, `${id}: ${answer.body}`).toBeLessThan(500)
      }
    }
  })
})
