import { randomUUID } from 'node:crypto'
import { prepareClaim } from '@fryward/room'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { cookieOf, doorOf, password } from './door.ts'

let world: World
let door: ReturnType<typeof doorOf>

beforeAll(async () => {
  world = await openWorld()
  door = doorOf(world)
})
afterAll(() => world.close())

describe('claiming the server', () => {
  let code: string
  const claim = (typed: string, email = 'first@example.test') =>
    world.call(null, 'claimServer', { body: { code: typed, name: 'First Owner', email, password } })

  test('nobody can before a code was made', async () => {
    expect((await claim('AAAA-BBBB-CCCC')).problem?.code).toBe('wrong_state')
    const status = await world.ok(null, 'getServer')
    expect(status).toMatchObject({ isClaimed: false, hasDemoRoom: false, demoPeople: [] })
  })

  test('a wrong code is refused, and so is the code of an earlier start', async () => {
    const ctx = { database: world.database, actor: { kind: 'system' as const, job: 'claim' }, now: world.clock.now() }
    const earlier = (await prepareClaim({ ctx, kept: null }))!
    code = (await prepareClaim({ ctx, kept: null }))!
    expect(code).toMatch(/^[A-Z0-9]{4}-[A-Z0-9]{4}-[A-Z0-9]{4}$/)
    expect((await claim('AAAA-BBBB-CCCC')).problem?.code).toBe('not_allowed')
    expect((await claim(earlier)).problem?.code).toBe('not_allowed')
    expect(await world.database.prisma.user.count()).toBe(0)
  })

  test('a kept code outlives a restart; one that was kept before another start does not', async () => {
    const ctx = { database: world.database, actor: { kind: 'system' as const, job: 'claim' }, now: world.clock.now() }
    expect(await prepareClaim({ ctx, kept: code })).toBe(code)
    const stale = code
    code = (await prepareClaim({ ctx, kept: null }))!
    expect((await claim(stale)).problem?.code).toBe('not_allowed')
    expect(await prepareClaim({ ctx, kept: code })).toBe(code)
  })

  test('the code works once, however it is typed and by however many at once', async () => {
    const typed = code.toLowerCase().replaceAll('-', ' ')
    const answers = await Promise.all([claim(typed), claim(typed, 'second@example.test')])
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 409])
    expect((await world.ok(null, 'getServer')).isClaimed).toBe(true)
    expect((await claim(code, 'third@example.test')).problem?.code).toBe('wrong_state')
    expect(await world.database.prisma.user.count()).toBe(1)
    const ctx = { database: world.database, actor: { kind: 'system' as const, job: 'claim' }, now: world.clock.now() }
    expect(await prepareClaim({ ctx, kept: code })).toBeNull()
  })

  test('the first owner signs in and sets up a room', async () => {
    const { email } = await world.database.prisma.user.findFirstOrThrow()
    const answer = await door.signIn(email, password)
    expect(answer.statusCode).toBe(200)
    const first = { userId: '', name: '', email, cookie: cookieOf(answer) }
    expect(await world.ok(first, 'getMe')).toMatchObject({ user: { email }, canCreateRooms: true, rooms: [] })
  })
})

test('a stranger is told of the invented people of the demo room, and of nobody else in it', async () => {
  const first = await world.database.prisma.user.findFirstOrThrow()
  const roomId = randomUUID()
  const now = world.clock.now()
  const room = { timeZone: 'UTC', units: 'metric', lightsOnAt: '07:00', lightsOffAt: '19:00', rounds: [] } as const
  await world.database.prisma.room.create({
    data: { id: roomId, name: 'Demo', isDemo: true, salinity: 33, temperatureC: 27, createdAt: now, ...room },
  })
  const visitor = await world.person('A visitor', { roomId, role: 'viewer' })
  await world.database.prisma.user.update({ where: { id: visitor.userId }, data: { email: 'visitor@demo.example' } })
  await world.database.prisma.membership.create({
    data: { roomId, userId: first.id, role: 'owner', joinedAt: now },
  })
  const { hasDemoRoom, demoPeople } = await world.ok(null, 'getServer')
  expect(hasDemoRoom).toBe(true)
  expect(demoPeople).toEqual([{ name: 'A visitor', email: 'visitor@demo.example', role: 'viewer' }])
})
