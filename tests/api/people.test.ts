import { createApi } from '@fryward/api'
import { prepareClaim } from '@fryward/room'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

let world: World
let owner: Person
let roomId: string

beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const password = 'a long enough password'
const inRoom = () => ({ params: { roomId } })
const newest = async () => (await world.ok(owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })).entries[0]!

type Door = { address?: string; headers?: Record<string, string> }
let lastAddress = 0
const freshAddress = () => {
  lastAddress += 1
  return `10.1.${Math.floor(lastAddress / 250)}.${(lastAddress % 250) + 1}`
}
const signIn = (email: string, typed: string, { address = freshAddress(), headers = {} }: Door = {}) =>
  world.app.inject({
    method: 'POST',
    url: '/api/auth/sign-in/email',
    remoteAddress: address,
    headers: { host: 'localhost:3000', origin: 'http://localhost:3000', ...headers },
    payload: { email, password: typed },
  })
const cookieOf = (answer: { cookies: { name: string; value: string }[] }) =>
  answer.cookies.map(({ name, value }) => `${name}=${encodeURIComponent(value)}`).join('; ')
const tokenOf = (link: string) => link.split('/').at(-1)!
const invite = async (role: 'owner' | 'caretaker' | 'stand_in' | 'viewer' = 'stand_in', daysValid = 7) => {
  const made = await world.ok(owner, 'createInvitation', { ...inRoom(), body: { role, daysValid } })
  return { ...made, token: tokenOf(made.link) }
}
const join = (token: string, email: string, name = 'Newcomer') =>
  world.call(null, 'joinByInvitation', { params: { token }, body: { name, email, password } })

describe('claiming the server', () => {
  let code: string
  const claim = (typed: string, email = 'first@example.test') =>
    world.call(null, 'claimServer', { body: { code: typed, name: 'First Owner', email, password } })

  test('nobody can before a code was made', async () => {
    expect((await claim('AAAA-BBBB-CCCC')).problem?.code).toBe('wrong_state')
    const status = await world.ok(null, 'getServer')
    expect(status).toMatchObject({ isClaimed: false, hasDemoRoom: false })
  })

  test('a wrong code is refused, and so is the code of an earlier start', async () => {
    const ctx = { database: world.database, actor: { kind: 'system' as const, job: 'claim' }, now: world.clock.now() }
    const earlier = (await prepareClaim({ ctx }))!
    code = (await prepareClaim({ ctx }))!
    expect(code).toMatch(/^[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}$/)
    expect((await claim('AAAA-BBBB-CCCC')).problem?.code).toBe('not_allowed')
    expect((await claim(earlier)).problem?.code).toBe('not_allowed')
    expect(await world.database.prisma.user.count()).toBe(0)
  })

  test('the code works once, however it is typed and by however many at once', async () => {
    const typed = code.toLowerCase().replaceAll('-', ' ')
    const answers = await Promise.all([claim(typed), claim(typed, 'second@example.test')])
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 409])
    expect((await world.ok(null, 'getServer')).isClaimed).toBe(true)
    expect((await claim(code, 'third@example.test')).problem?.code).toBe('wrong_state')
    expect(await world.database.prisma.user.count()).toBe(1)
    const ctx = { database: world.database, actor: { kind: 'system' as const, job: 'claim' }, now: world.clock.now() }
    expect(await prepareClaim({ ctx })).toBeNull()
  })

  test('the first owner signs in and sets up a room', async () => {
    const { email } = await world.database.prisma.user.findFirstOrThrow()
    const answer = await signIn(email, password)
    expect(answer.statusCode).toBe(200)
    const first = { userId: '', name: '', email, cookie: cookieOf(answer) }
    expect(await world.ok(first, 'getMe')).toMatchObject({ user: { email }, canCreateRooms: true, rooms: [] })
  })
})

describe('invitations', () => {
  beforeAll(async () => {
    const opened = await openRoom(world)
    owner = opened.owner
    roomId = opened.room.id
  })

  test('a link says what it invites to, without its token being kept', async () => {
    const made = await invite('caretaker', 3)
    expect(await newest()).toMatchObject({
      action: 'invitation.create',
      detail: { invitationId: made.id, role: 'caretaker' },
    })
    const preview = await world.ok(null, 'getInvitationPreview', { params: { token: made.token } })
    expect(preview).toEqual({
      roomName: 'Back room',
      role: 'caretaker',
      invitedByName: owner.name,
      expiresAt: new Date(Date.parse(world.clock.now()) + 3 * 86_400_000).toISOString(),
    })
    const { rows } = await world.database.pool.query<{ text: string }>(
      'SELECT invitation::text AS text FROM invitation',
    )
    for (const row of rows) expect(row.text).not.toContain(made.token)
    const listed = await world.ok(owner, 'listInvitations', inRoom())
    expect(JSON.stringify(listed)).not.toContain(made.token)
  })

  test('somebody new joins with an account of their own, signs in with it, and has the role', async () => {
    const { token, id } = await invite('stand_in')
    const answer = await join(token, 'Sam@Example.test', 'Sam')
    expect([answer.status, answer.body]).toEqual([201, { roomId }])
    expect(await newest()).toMatchObject({ action: 'person.join', actor: { kind: 'person', name: 'Sam' } })
    const signedIn = await signIn('sam@example.test', password)
    expect(signedIn.statusCode).toBe(200)
    const sam = { userId: '', name: 'Sam', email: 'sam@example.test', cookie: cookieOf(signedIn) }
    expect((await world.ok(sam, 'getMe')).rooms).toMatchObject([{ id: roomId, role: 'stand_in' }])
    const invitation = (await world.ok(owner, 'listInvitations', inRoom())).find((each) => each.id === id)
    expect(invitation).toMatchObject({ acceptedAt: world.clock.now(), acceptedByName: 'Sam' })
  })

  test('somebody with an account accepts, once', async () => {
    const { token } = await invite('viewer')
    const guest = await world.person('Guest')
    const accept = () => world.call(guest, 'acceptInvitation', { params: { token }, body: {} })
    expect((await accept()).body).toEqual({ roomId })
    expect((await accept()).problem?.code).toBe('not_found')
    const second = await invite('caretaker')
    const already = await world.call(guest, 'acceptInvitation', { params: { token: second.token }, body: {} })
    expect(already.problem?.code).toBe('wrong_state')
    // Being in already does not use the link up.
    expect((await world.call(null, 'getInvitationPreview', { params: { token: second.token } })).status).toBe(200)
  })

  test('a link used by many at the same instant lets one in', async () => {
    const { token } = await invite('viewer')
    const guests = await Promise.all([1, 2, 3].map((number) => world.person(`At once ${number}`)))
    const answers = await Promise.all([
      ...guests.map((guest) => world.call(guest, 'acceptInvitation', { params: { token }, body: {} })),
      join(token, 'at-once-4@example.test'),
      join(token, 'at-once-5@example.test'),
    ])
    expect(answers.filter((answer) => answer.status < 300)).toHaveLength(1)
    for (const answer of answers.filter((each) => each.problem)) expect(answer.problem?.code).toBe('not_found')
  })

  test('a form that was sent twice at the same instant makes one account', async () => {
    const { token } = await invite('viewer')
    const answers = await Promise.all([1, 2, 3].map(() => join(token, 'double@example.test')))
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 404, 404])
    expect(await world.database.prisma.user.count({ where: { email: 'double@example.test' } })).toBe(1)
  })

  test('one address with two links at the same instant is one account', async () => {
    const [first, second] = [await invite('viewer'), await invite('viewer')]
    const answers = await Promise.all([join(first.token, 'two@example.test'), join(second.token, 'Two@example.test')])
    expect(answers.map((answer) => answer.problem?.code ?? 'joined').sort()).toEqual(['conflict', 'joined'])
  })

  test('accepting and withdrawing at the same instant leave one of the two, never an error of ours', async () => {
    for (let round = 0; round < 5; round += 1) {
      const { token, id } = await invite('viewer')
      const guest = await world.person(`Racer ${round}`)
      const [accepted, revoked] = await Promise.all([
        world.call(guest, 'acceptInvitation', { params: { token }, body: {} }),
        world.call(owner, 'revokeInvitation', { params: { roomId, invitationId: id } }),
      ])
      expect([accepted.status, revoked.status]).toEqual(accepted.status === 201 ? [201, 409] : [404, 200])
    }
  })

  test('a link that is withdrawn, out of date or made up opens nothing', async () => {
    const revoked = await invite()
    await world.ok(owner, 'revokeInvitation', { params: { roomId, invitationId: revoked.id } })
    expect(await newest()).toMatchObject({ action: 'invitation.revoke', detail: { invitationId: revoked.id } })
    const expired = await invite('viewer', 1)
    world.clock.advanceMinutes(1440)
    const before = await world.database.prisma.user.count()
    for (const token of [revoked.token, expired.token, 'made-up-made-up-made-up']) {
      expect((await world.call(null, 'getInvitationPreview', { params: { token } })).problem?.code).toBe('not_found')
      expect((await join(token, 'nobody@example.test')).problem?.code).toBe('not_found')
      const accepted = await world.call(await world.person('Late'), 'acceptInvitation', { params: { token }, body: {} })
      expect(accepted.problem?.code).toBe('not_found')
    }
    expect(await world.database.prisma.user.count()).toBe(before + 3)
  })

  test('an address that has an account joins by signing in, not by a second account', async () => {
    const { token } = await invite()
    await join((await invite()).token, 'twice@example.test')
    expect((await join(token, 'TWICE@example.test')).problem?.code).toBe('conflict')
    // The link is still good for them.
    expect((await world.call(null, 'getInvitationPreview', { params: { token } })).status).toBe(200)
  })
})

describe('roles', () => {
  test('a room keeps its last owner', async () => {
    const { room, owner: only } = await openRoom(world, { name: 'Owned' })
    const params = { roomId: room.id, userId: only.userId }
    const demoted = await world.call(only, 'changeRole', { params, body: { role: 'viewer' } })
    const removed = await world.call(only, 'removePerson', { params })
    expect([demoted.problem?.code, removed.problem?.code]).toEqual(['wrong_state', 'wrong_state'])
  })

  test('of two owners who take each other out at the same instant, one stays', async () => {
    const { room, owner: first } = await openRoom(world, { name: 'Quarrel' })
    const second = await world.person('Second', { roomId: room.id, role: 'owner' })
    const remove = (actor: Person, other: Person) =>
      world.call(actor, 'removePerson', { params: { roomId: room.id, userId: other.userId } })
    const answers = await Promise.all([remove(first, second), remove(second, first)])
    expect(answers.filter((answer) => answer.status === 200)).toHaveLength(1)
    expect(await world.database.prisma.membership.count({ where: { roomId: room.id, role: 'owner' } })).toBe(1)
  })

  test('a changed role counts from the next request on, and is in the audit log', async () => {
    const carla = await world.person('Carla', { roomId, role: 'viewer' })
    const note = () =>
      world.call(carla, 'recordFact', {
        params: { roomId },
        body: { kind: 'observation', subjectId: roomId, data: { note: 'all quiet' } },
      })
    expect((await note()).problem?.code).toBe('not_allowed')
    const changed = await world.ok(owner, 'changeRole', {
      params: { roomId, userId: carla.userId },
      body: { role: 'stand_in' },
    })
    expect(changed).toMatchObject({ userId: carla.userId, role: 'stand_in' })
    expect(await newest()).toMatchObject({
      action: 'person.change_role',
      detail: { userId: carla.userId, from: 'viewer', to: 'stand_in' },
    })
    expect((await note()).status).toBe(201)
  })

  test('whoever leaves is gone from the list and their records stay under their name', async () => {
    const leaver = await world.person('Leaver', { roomId, role: 'caretaker' })
    const fact = await world.ok(leaver, 'recordFact', {
      params: { roomId },
      body: { kind: 'observation', subjectId: roomId, data: { note: 'my last word' } },
    })
    await world.ok(owner, 'removePerson', { params: { roomId, userId: leaver.userId } })
    expect(await newest()).toMatchObject({ action: 'person.remove', detail: { userId: leaver.userId } })
    expect((await world.ok(owner, 'listPeople', inRoom())).map((person) => person.userId)).not.toContain(leaver.userId)
    const { facts } = await world.ok(owner, 'listFacts', { params: { roomId }, query: { limit: 500 } })
    expect(facts.find((each) => each.id === fact.id)?.recordedByName).toBe('Leaver')
    expect((await world.call(leaver, 'getRoom', inRoom())).problem?.code).toBe('not_found')
  })

  test("another room's person is not found", async () => {
    const stranger = await world.person('Elsewhere')
    const params = { roomId, userId: stranger.userId }
    expect((await world.call(owner, 'changeRole', { params, body: { role: 'owner' } })).problem?.code).toBe('not_found')
    expect((await world.call(owner, 'removePerson', { params })).problem?.code).toBe('not_found')
  })
})

describe('signing in', () => {
  const email = 'signs-in@example.test'
  beforeAll(async () => {
    await join((await invite()).token, email)
  })

  test('a wrong password and an unknown address get the same answer', async () => {
    const wrong = await signIn(email, 'not the password')
    const unknown = await signIn('nobody-at-all@example.test', 'not the password')
    expect([wrong.statusCode, unknown.statusCode]).toEqual([401, 401])
    expect(wrong.json()).toEqual(unknown.json())
  })

  test('nobody signs up without an invitation', async () => {
    const answer = await world.app.inject({
      method: 'POST',
      url: '/api/auth/sign-up/email',
      headers: { host: 'localhost:3000', origin: 'http://localhost:3000' },
      payload: { email: 'self@example.test', password, name: 'Self' },
    })
    expect(answer.statusCode).toBeGreaterThanOrEqual(400)
    expect(await world.database.prisma.user.count({ where: { email: 'self@example.test' } })).toBe(0)
  })

  test('the session cookie is not for scripts or other sites', async () => {
    const [cookie] = (await signIn(email, password)).cookies
    expect(cookie).toMatchObject({ httpOnly: true, sameSite: 'Lax', path: '/' })
  })

  test('after eight tries from one address the ninth waits, and another address still gets in', async () => {
    const address = '203.0.113.7'
    for (let tries = 0; tries < 8; tries += 1)
      expect((await signIn(email, `wrong password ${tries}`, { address })).statusCode).toBe(401)
    expect((await signIn(email, password, { address })).statusCode).toBe(429)
    expect((await signIn(email, password, { address: '203.0.113.8' })).statusCode).toBe(200)
  })

  test.each(['x-forwarded-for', 'x-real-ip', 'cf-connecting-ip', 'forwarded', 'x-client-ip', 'x-fryward-client'])(
    'a client that rotates %s is still one address',
    async (header) => {
      const address = freshAddress()
      const statuses: number[] = []
      for (let tries = 0; tries < 9; tries += 1) {
        const headers = { [header]: header === 'forwarded' ? `for=198.51.100.${tries}` : `198.51.100.${tries}` }
        statuses.push((await signIn(email, 'wrong password', { address, headers })).statusCode)
      }
      expect(statuses).toEqual([...Array<number>(8).fill(401), 429])
    },
  )

  test('a door that many knock on still opens in order: tries at the same instant are all counted', async () => {
    const address = freshAddress()
    const answers = await Promise.all(Array.from({ length: 16 }, () => signIn(email, 'wrong password', { address })))
    const later = await signIn(email, password, { address })
    expect(answers.every((answer) => [401, 429].includes(answer.statusCode))).toBe(true)
    expect(later.statusCode).toBe(429)
  })

  test('signing out ends the session at once', async () => {
    const cookie = cookieOf(await signIn(email, password))
    const person = { userId: '', name: '', email, cookie }
    expect((await world.call(person, 'getMe')).status).toBe(200)
    const answer = await world.app.inject({
      method: 'POST',
      url: '/api/auth/sign-out',
      headers: { host: 'localhost:3000', origin: 'http://localhost:3000', cookie },
      payload: {},
    })
    expect(answer.statusCode).toBe(200)
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
    const address = freshAddress()
    const statuses: number[] = []
    for (let tries = 0; tries < 21; tries += 1) statuses.push((await claim(address, `198.51.100.${tries}`)).statusCode)
    expect(statuses.slice(0, 20)).toEqual(Array<number>(20).fill(409))
    const last = await claim(address)
    expect([statuses[20], last.statusCode]).toEqual([429, 429])
    expect(last.headers['content-type']).toMatch(/^application\/problem\+json/)
    expect(last.json()).toMatchObject({ code: 'too_many_requests' })
    expect((await claim(freshAddress())).statusCode).toBe(409)
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
    const answer = await signIn(owner.email, 'whatever it is', { headers: { origin: 'https://evil.example' } })
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
