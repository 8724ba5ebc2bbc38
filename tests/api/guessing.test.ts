import { createApi } from '@fryward/api'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { doorOf, password } from './door.ts'

let world: World
let door: ReturnType<typeof doorOf>

beforeAll(async () => {
  world = await openWorld()
  door = doorOf(world)
})
afterAll(() => world.close())

describe('guessing', () => {
  const claim = (address: string, forwarded = '198.51.100.1') =>
    world.app.inject({
      method: 'POST',
      url: '/api/v1/claim',
      remoteAddress: address,
      headers: { host: 'localhost:3000', 'x-forwarded-for': forwarded },
      payload: { code: 'AAAA-BBBB-CCCC', name: 'Guesser', email: 'guesser@example.test', password },
    })

  test('of a code is slowed down after twenty tries from one address, whatever it says of itself', async () => {
    const address = door.freshAddress()
    const statuses: number[] = []
    for (let tries = 0; tries < 21; tries += 1) statuses.push((await claim(address, `198.51.100.${tries}`)).statusCode)
    expect(statuses.slice(0, 20)).toEqual(Array<number>(20).fill(409))
    const last = await claim(address)
    expect([statuses[20], last.statusCode]).toEqual([429, 429])
    expect(last.headers['content-type']).toMatch(/^application\/problem\+json/)
    expect(last.json()).toMatchObject({ code: 'too_many_requests' })
    expect((await claim(door.freshAddress())).statusCode).toBe(409)
  })

  test('behind a proxy that is trusted, each client is an address of its own', async () => {
    const app = await createApi({
      database: world.database,
      authSecret: 'another secret for tests only, long enough',
      publicUrl: 'http://localhost:3000',
      version: 'test',
      trustedProxies: ['10.9.9.9'],
    })
    const knock = (proxy: string, client: string) =>
      app.inject({
        method: 'POST',
        url: '/api/auth/sign-in/email',
        remoteAddress: proxy,
        headers: { host: 'localhost:3000', origin: 'http://localhost:3000', 'x-forwarded-for': client },
        payload: { email: 'nobody@example.test', password: 'wrong password' },
      })
    const statuses: number[] = []
    for (let tries = 0; tries < 9; tries += 1) statuses.push((await knock('10.9.9.9', '203.0.113.50')).statusCode)
    expect(statuses).toEqual([...Array<number>(8).fill(401), 429])
    expect((await knock('10.9.9.9', '203.0.113.51')).statusCode).toBe(401)
    // What a client puts in front of the proxy's own word counts for nothing.
    expect((await knock('10.9.9.9', '198.51.100.9, 203.0.113.50')).statusCode).toBe(429)
    await app.close()
  })
})
