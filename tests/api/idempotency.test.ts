import { randomUUID } from 'node:crypto'
import { forgetOldAnswers } from '@fryward/room'
import { personHeader, type RouteId, takesRepeatKey } from '@fryward/shared'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openWorld, type Person, type World } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { routeIds, routeOf, send } from './send.ts'
import { validRequest } from './valid-requests/index.ts'

// They are writes by their method alone: what they ask changes nothing.
const questions: RouteId[] = ['previewRule', 'askWhatIf', 'previewImport', 'previewReadings']

let world: World
let full: FullRoom
let serial = 0
let owner: Person
let caretaker: Person
let roomId: string

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  ;({ owner, caretaker, roomId } = full)
})
afterAll(() => world.close())

const tank = (name: string) => ({
  name,
  kind: 'storage' as const,
  volumeL: 60,
  temperatureC: 25,
  salinity: 33,
})
const create = (person: Person, key: string, name: string, inRoom = roomId) =>
  world.call(person, 'createTank', { params: { roomId: inRoom }, body: tank(name), key })
const tanksNamed = (name: string) => world.database.prisma.subject.count({ where: { roomId, name } })
const revision = async () => (await world.database.prisma.room.findUniqueOrThrow({ where: { id: roomId } })).revision

const keyed = routeIds.filter((id) => takesRepeatKey(routeOf(id)))

describe.each(keyed)('%s', (id) => {
  test('sent twice with one key has one effect and one answer', async () => {
    serial += 1
    const sender = id === 'acceptInvitation' ? await world.person('Guest') : owner
    const request = {
      ...(await validRequest(id, { world, full, as: sender, serial })),
      headers: { 'idempotency-key': randomUUID() },
    }
    const before = await fingerprintOf(world, roomId)
    const first = await send(world, sender, id, request)
    expect(first.status, first.text).toBe(routeOf(id).status)
    const after = await fingerprintOf(world, roomId)
    if (!questions.includes(id)) expect(after).not.toEqual(before)
    const second = await send(world, sender, id, request)
    expect([second.status, second.json]).toEqual([first.status, first.json])
    expect(await fingerprintOf(world, roomId)).toEqual(after)
  })
})

test('a repeated request gets the first answer and has one effect', async () => {
  const key = randomUUID()
  const first = await create(owner, key, 'Spare 1')
  const moved = await revision()
  const second = await create(owner, key, 'Spare 1')
  expect(first.status).toBe(201)
  expect(second.status).toBe(201)
  expect(second.body).toEqual(first.body)
  expect(await tanksNamed('Spare 1')).toBe(1)
  expect(await revision()).toBe(moved)
})

test('a repeat gets the first answer even when the thing has changed since', async () => {
  const key = randomUUID()
  const first = await create(owner, key, 'Spare 2')
  await world.ok(owner, 'changeTank', {
    params: { roomId, tankId: first.body.id },
    body: { volumeL: 70, version: first.body.version },
  })
  expect((await create(owner, key, 'Spare 2')).body).toEqual(first.body)
})

test('a key used for another body is refused and changes nothing', async () => {
  const key = randomUUID()
  await create(owner, key, 'Spare 3')
  const answer = await create(owner, key, 'Spare 4')
  expect([answer.status, answer.problem?.code]).toEqual([409, 'idempotency_mismatch'])
  expect(await tanksNamed('Spare 4')).toBe(0)
})

test('a key used for another route is refused', async () => {
  const key = randomUUID()
  await create(owner, key, 'Spare 5')
  const answer = await world.call(owner, 'createConcentrate', {
    params: { roomId },
    body: { name: 'Another', cellsPerMl: 1e9 },
    key,
  })
  expect(answer.problem?.code).toBe('idempotency_mismatch')
})

test('a key used in one room is refused in another', async () => {
  const other = await world.ok(owner, 'createRoom', {
    body: {
      ...{ name: 'Second room', timeZone: 'Europe/Lisbon', units: 'us', lightsOnAt: '07:00', lightsOffAt: '19:00' },
      ...{ salinity: 33, temperatureC: 26 },
    },
  })
  const key = randomUUID()
  await create(owner, key, 'Spare 6')
  expect((await create(owner, key, 'Spare 6', other.id)).problem?.code).toBe('idempotency_mismatch')
})

test('the same key of two people is two keys', async () => {
  const key = randomUUID()
  expect((await create(owner, key, 'Spare 7')).status).toBe(201)
  expect((await create(caretaker, key, 'Spare 8')).status).toBe(201)
})

test('requests that arrive at the same instant have one effect and one answer', async () => {
  const key = randomUUID()
  const before = await revision()
  const answers = await Promise.all(Array.from({ length: 5 }, () => create(owner, key, 'Spare 9')))
  for (const answer of answers) {
    expect(answer.status).toBe(201)
    expect(answer.body).toEqual(answers[0]!.body)
  }
  expect(await tanksNamed('Spare 9')).toBe(1)
  expect(await revision()).toBe(before + 1)
})

test('a new room asked for twice at the same instant is one room', async () => {
  const key = randomUUID()
  const body = {
    ...{
      name: 'Twice',
      timeZone: 'Europe/Lisbon',
      units: 'metric' as const,
      lightsOnAt: '07:00',
      lightsOffAt: '19:00',
    },
    ...{ salinity: 33, temperatureC: 26 },
  }
  const answers = await Promise.all([1, 2, 3].map(() => world.call(owner, 'createRoom', { body, key })))
  expect(answers.map((answer) => answer.status)).toEqual([201, 201, 201])
  expect(await world.database.prisma.room.count({ where: { name: 'Twice' } })).toBe(1)
})

test('a refused request keeps no answer: the same key works once the reason is gone', async () => {
  const key = randomUUID()
  const taken = await world.ok(owner, 'createTank', { params: { roomId }, body: tank('Taken') })
  expect((await create(owner, key, 'Taken')).status).toBe(400)
  await world.ok(owner, 'endTank', {
    params: { roomId, tankId: taken.id },
    body: { reason: 'cracked', version: taken.version },
  })
  expect((await create(owner, key, 'Taken')).status).toBe(201)
})

test('a repeat by somebody who has lost the role since is refused', async () => {
  const key = randomUUID()
  const leaver = await world.person('Leaver', { roomId, role: 'caretaker' })
  expect((await create(leaver, key, 'Spare 10')).status).toBe(201)
  await world.ok(owner, 'changeRole', { params: { roomId, userId: leaver.userId }, body: { role: 'viewer' } })
  expect((await create(leaver, key, 'Spare 10')).problem?.code).toBe('not_allowed')
  await world.ok(owner, 'removePerson', { params: { roomId, userId: leaver.userId } })
  expect((await create(leaver, key, 'Spare 10')).problem?.code).toBe('not_found')
})

test('a repeated new room is refused to somebody who may set up rooms no longer', async () => {
  const key = randomUUID()
  const body = {
    ...{ name: 'Lost', timeZone: 'Europe/Lisbon', units: 'metric' as const, lightsOnAt: '07:00', lightsOffAt: '19:00' },
    ...{ salinity: 33, temperatureC: 26 },
  }
  const second = await world.person('Second owner', { roomId, role: 'owner' })
  const made = await world.ok(second, 'createRoom', { body, key })
  const { prisma } = world.database
  await prisma.membership.deleteMany({ where: { userId: second.userId } })
  const answer = await world.call(second, 'createRoom', { body, key })
  expect(answer.problem?.code).toBe('not_allowed')
  expect(await prisma.room.count({ where: { id: made.id } })).toBe(1)
})

test('what one person meant is not booked for another who signed in on the same device', async () => {
  const body = tank('Spare 12')
  const sent = (headers: Record<string, string>) =>
    send(world, caretaker, 'createTank', { params: { roomId }, body, headers })
  const refused = await sent({ [personHeader]: owner.userId })
  expect(refused.problem).toMatchObject({ code: 'not_signed_in', detail: expect.stringContaining('Carla') })
  expect(await tanksNamed('Spare 12')).toBe(0)
  expect((await sent({ [personHeader]: caretaker.userId })).status).toBe(201)
})

test('kept answers are forgotten after 30 days, not before', async () => {
  const key = randomUUID()
  const { prisma } = world.database
  await create(owner, key, 'Spare 11')
  const kept = () => prisma.idempotencyKey.count({ where: { userId: owner.userId, key } })
  const clock = { database: world.database, actor: { kind: 'system' as const, job: 'sweep' } }
  const days = (number: number) => new Date(Date.parse(world.clock.now()) + number * 86_400_000).toISOString()
  await forgetOldAnswers({ ...clock, now: days(29.9) })
  expect(await kept()).toBe(1)
  await forgetOldAnswers({ ...clock, now: days(30.1) })
  expect(await kept()).toBe(0)
})
