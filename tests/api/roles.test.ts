import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

let world: World
let owner: Person
let roomId: string

beforeAll(async () => {
  world = await openWorld()
  const opened = await openRoom(world)
  owner = opened.owner
  roomId = opened.room.id
})
afterAll(() => world.close())

const inRoom = () => ({ params: { roomId } })
const newest = async () => (await world.ok(owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })).entries[0]!

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
