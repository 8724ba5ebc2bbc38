import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { doorOf } from './door.ts'

let world: World
let owner: Person
let roomId: string
let door: ReturnType<typeof doorOf>

beforeAll(async () => {
  world = await openWorld()
  door = doorOf(world)
  const opened = await openRoom(world)
  owner = opened.owner
  roomId = opened.room.id
})
afterAll(() => world.close())

describe('other sites and other names', () => {
  const write = (headers: Record<string, string>) =>
    world.app.inject({
      method: 'POST',
      url: `/api/v1/rooms/${roomId}/facts`,
      headers: { host: 'localhost:3000', cookie: owner.cookie, ...headers },
      payload: { kind: 'observation', subjectId: roomId, data: { note: 'from where?' } },
    })
  const revision = async () => (await world.database.prisma.room.findUniqueOrThrow({ where: { id: roomId } })).revision

  test.each<Record<string, string>>([
    { origin: 'https://evil.example' },
    { origin: 'http://localhost:3001' },
    { origin: 'https://localhost:3000' },
    { origin: 'http://127.0.0.1:3000' },
    { origin: 'https://localhost:3000', 'x-forwarded-proto': 'https' },
    { origin: 'http://evil.example', 'x-forwarded-host': 'evil.example' },
    { origin: 'http://localhost.evil.example:3000' },
    { origin: 'null' },
    { origin: 'nonsense' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site', origin: 'http://localhost:3000' },
  ])('a write with %j is refused and writes nothing', async (headers) => {
    const before = await revision()
    const answer = await write(headers)
    expect([answer.statusCode, answer.json().code]).toEqual([403, 'not_allowed'])
    expect(await revision()).toBe(before)
  })

  test('a sign-in from another site is refused', async () => {
    const answer = await door.signIn(owner.email, 'whatever it is', { headers: { origin: 'https://evil.example' } })
    expect(answer.statusCode).toBe(403)
  })

  test('a write from our own page, or from no page, is taken', async () => {
    expect((await write({ origin: 'http://localhost:3000', 'sec-fetch-site': 'same-origin' })).statusCode).toBe(201)
    expect((await write({})).statusCode).toBe(201)
  })

  test.each(['evil.example', 'evil.example:3000', 'localhost.evil.example', '[::2]:3000', '10.255.255.1'])(
    'this server does not answer to the name "%s"',
    async (host) => {
      const answer = await world.app.inject({ url: '/api/v1/server', headers: { host } })
      expect([answer.statusCode, answer.json().code]).toEqual([403, 'not_allowed'])
    },
  )

  test.each(['localhost:3000', 'localhost', '127.0.0.1:8080', '[::1]:3000'])('it answers to %s', async (host) => {
    expect((await world.app.inject({ url: '/api/v1/server', headers: { host } })).statusCode).toBe(200)
  })
})
