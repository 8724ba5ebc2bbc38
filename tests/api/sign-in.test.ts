import { ProblemSchema } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { cookieOf, doorOf, password } from './door.ts'

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

describe('signing in', () => {
  const email = 'signs-in@example.test'
  beforeAll(async () => {
    await door.join((await door.invite({ owner, roomId })).token, email)
  })
  // What was guessed in one test is over in the next.
  beforeEach(() => world.clock.advanceMinutes(16))

  test('a wrong password and an unknown address get the same answer', async () => {
    const wrong = await door.signIn(email, 'not the password')
    const unknown = await door.signIn('nobody-at-all@example.test', 'not the password')
    expect([wrong.statusCode, unknown.statusCode]).toEqual([401, 401])
    expect({ ...wrong.json(), requestId: '' }).toEqual({ ...unknown.json(), requestId: '' })
  })

  test('what is refused is told as everywhere else: problem details with a code of the closed list', async () => {
    const address = door.freshAddress()
    const wrong = await door.signIn(email, 'not the password', { address })
    const shapeless = await world.app.inject({
      method: 'POST',
      url: '/api/auth/sign-in/email',
      headers: { host: 'localhost:3000', origin: 'http://localhost:3000' },
      payload: { email: 'no address', password: 7 },
    })
    const nowhere = await world.app.inject({
      method: 'POST',
      url: '/api/auth/no-such-thing',
      headers: { host: 'localhost:3000', origin: 'http://localhost:3000' },
      payload: {},
    })
    for (let tries = 0; tries < 7; tries += 1) await door.signIn(email, 'not the password', { address })
    const tooMany = await door.signIn(email, 'not the password', { address })
    const answers = [wrong, shapeless, nowhere, tooMany]
    for (const answer of answers) {
      expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/)
      expect(ProblemSchema.parse(answer.json()).status).toBe(answer.statusCode)
    }
    expect(answers.map((answer) => answer.json().code)).toEqual([
      'not_signed_in',
      'invalid_input',
      'not_found',
      'too_many_requests',
    ])
    expect(Number(tooMany.headers['retry-after'])).toBeGreaterThan(0)
  })

  test('nobody signs up without an invitation', async () => {
    const answer = await world.app.inject({
      method: 'POST',
      url: '/api/auth/sign-up/email',
      headers: { host: 'localhost:3000', origin: 'http://localhost:3000' },
      payload: { email: 'self@example.test', password, name: 'Self' },
    })
    expect(answer.json().code).toBe('not_found')
    expect(await world.database.prisma.user.count({ where: { email: 'self@example.test' } })).toBe(0)
  })

  test('the session cookie is not for scripts or other sites', async () => {
    const [cookie] = (await door.signIn(email, password)).cookies
    expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Lax', path: '/' })
  })

  test('after eight tries from one address the ninth waits, and another address still gets in', async () => {
    const address = '203.0.113.7'
    for (let tries = 0; tries < 8; tries += 1)
      expect((await door.signIn(email, `wrong password ${tries}`, { address })).statusCode).toBe(401)
    expect((await door.signIn(email, password, { address })).statusCode).toBe(429)
    expect((await door.signIn(email, password, { address: '203.0.113.8' })).statusCode).toBe(200)
  })

  test.each(['x-forwarded-for', 'x-real-ip', 'cf-connecting-ip', 'forwarded', 'x-client-ip', 'x-fryward-client'])(
    'a client that rotates %s is still one address',
    async (header) => {
      const address = door.freshAddress()
      const statuses: number[] = []
      for (let tries = 0; tries < 9; tries += 1) {
        const headers = { [header]: header === 'forwarded' ? `for=198.51.100.${tries}` : `198.51.100.${tries}` }
        statuses.push((await door.signIn(email, 'wrong password', { address, headers })).statusCode)
      }
      expect(statuses).toEqual([...Array<number>(8).fill(401), 429])
    },
  )

  test('a door that many knock on still opens in order: tries at the same instant are all counted', async () => {
    const address = door.freshAddress()
    const answers = await Promise.all(
      Array.from({ length: 16 }, () => door.signIn(email, 'wrong password', { address })),
    )
    const later = await door.signIn(email, password, { address })
    expect(answers.every((answer) => [401, 429].includes(answer.statusCode))).toBe(true)
    expect(later.statusCode).toBe(429)
  })

  test('signing out ends the session at once', async () => {
    const cookie = cookieOf(await door.signIn(email, password))
    const person = { userId: '', name: '', email, cookie }
    const me = await world.call(person, 'getMe')
    expect([me.status, me.headers['cache-control']]).toEqual([200, 'no-store'])
    const answer = await world.app.inject({
      method: 'POST',
      url: '/api/auth/sign-out',
      headers: { host: 'localhost:3000', origin: 'http://localhost:3000', cookie },
      payload: {},
    })
    expect(answer.statusCode).toBe(200)
    expect(answer.headers).toMatchObject({ 'clear-site-data': '"cache"', 'cache-control': 'no-store' })
    expect((await world.call(person, 'getMe')).problem?.code).toBe('not_signed_in')
  })

  test.each(['', 'fryward.session_token=', 'fryward.session_token=abc.def', 'fryward.session_token=%00'])(
    'the made-up cookie "%s" is nobody',
    async (cookie) => {
      const person = { userId: '', name: '', email: '', cookie }
      expect((await world.call(person, 'getMe')).problem?.code).toBe('not_signed_in')
    },
  )

  test('a token with a signature of its own making is nobody', async () => {
    const [token] = decodeURIComponent(owner.cookie.split('=')[1]!).split('.')
    const person = {
      ...owner,
      cookie: `fryward.session_token=${token}.${Buffer.from('x'.repeat(32)).toString('base64')}`,
    }
    expect((await world.call(person, 'getMe')).problem?.code).toBe('not_signed_in')
  })
})
