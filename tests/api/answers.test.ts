import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { urlOf } from './send.ts'

let world: World
let full: FullRoom
beforeAll(async () => {
  // Nothing listens on port 1: what is passed on to the dashboard answers that it is not up yet.
  world = await openWorld({ webUrl: 'http://127.0.0.1:1' })
  full = await openFullRoom(world)
})
afterAll(() => world.close())

const today = (headers: Record<string, string>) =>
  world.app.inject({
    method: 'GET',
    url: urlOf('getDay', { roomId: full.roomId, date: 'today' }),
    headers: { host: 'localhost:3000', cookie: full.owner.cookie, ...headers },
  })

test("a day's list is the same plain, gzipped and by Brotli, and Brotli's is the smallest", async () => {
  const plain = await today({})
  const gzipped = await today({ 'accept-encoding': 'gzip, deflate' })
  const brotli = await today({ 'accept-encoding': 'gzip, deflate, br, zstd' })
  expect(plain.headers['content-encoding']).toBeUndefined()
  expect(gzipped.headers['content-encoding']).toBe('gzip')
  expect(brotli.headers['content-encoding']).toBe('br')
  expect(gunzipSync(gzipped.rawPayload).toString()).toBe(plain.body)
  expect(brotliDecompressSync(brotli.rawPayload).toString()).toBe(plain.body)
  expect(brotli.rawPayload.length).toBeLessThan(gzipped.rawPayload.length)
})

test('an answer that the phone has already is not sent again', async () => {
  const first = await today({ 'accept-encoding': 'br' })
  const again = await today({ 'accept-encoding': 'br', 'if-none-match': String(first.headers.etag) })
  expect(again.statusCode).toBe(304)
  expect(again.rawPayload.length).toBe(0)
  const afterNote = await world.ok(full.owner, 'writeNote', {
    params: { roomId: full.roomId },
    body: { text: 'the lamp was changed', isWorry: false },
  })
  expect(afterNote.text).toBe('the lamp was changed')
  expect((await today({ 'if-none-match': String(first.headers.etag) })).statusCode).toBe(200)
})

test('an address that the API does not have is answered by the API as a problem, and any other by the dashboard', async () => {
  const at = (url: string) => world.app.inject({ method: 'GET', url, headers: { host: 'localhost:3000' } })
  const missing = await at('/api/v1/nothing/here?at=all')
  expect(missing.statusCode).toBe(404)
  expect(missing.headers['content-type']).toContain('application/problem+json')
  expect(missing.json()).toMatchObject({ code: 'not_found', detail: 'There is nothing at GET /api/v1/nothing/here.' })
  const page = await at('/nothing/here')
  expect(page.statusCode).toBe(503)
  expect(page.headers['content-type']).toContain('text/html')
  expect(page.headers['content-security-policy']).toMatch(/style-src 'self'; style-src-attr 'unsafe-hashes' 'sha256-/)
})

test('what the API says is never run, framed, sniffed or read by another site, a refusal as little as an answer', async () => {
  const refusal = await world.app.inject({ method: 'GET', url: '/api/v1/me', headers: { host: 'localhost:3000' } })
  const foreign = await world.app.inject({ method: 'GET', url: '/api/v1/me', headers: { host: 'elsewhere.example' } })
  expect([refusal.statusCode, foreign.statusCode]).toEqual([401, 403])
  for (const { headers } of [await today({}), refusal, foreign])
    expect(headers).toMatchObject({
      'content-security-policy': "default-src 'none'; frame-ancestors 'none'",
      'cross-origin-resource-policy': 'same-origin',
      'x-content-type-options': 'nosniff',
    })
})
