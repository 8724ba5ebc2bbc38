import { afterAll, beforeAll, expect, test } from 'vitest'
import { openWorld, type Person, type World } from '../support/world.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'

let world: World
let full: FullRoom
let tomorrow: string
beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  tomorrow = (await dayOf('tomorrow')).date
})
afterAll(() => world.close())

const take = (as: Person, userId: string | null, date = tomorrow) =>
  world.call(as, 'takeDuty', { params: { roomId: full.roomId, date }, body: { userId } })
const dayOf = (date: string = tomorrow) => world.ok(full.owner, 'getDay', { params: { roomId: full.roomId, date } })

test('a stand-in takes the room for a day; the day says so and an audit row says who', async () => {
  expect((await dayOf()).onDuty).toBeNull()
  const taken = await take(full.standIn, full.standIn.userId)
  expect(taken.body.onDuty).toEqual({ userId: full.standIn.userId, name: full.standIn.name })
  const day = await dayOf()
  expect(day.onDuty).toEqual(taken.body.onDuty)
  const audit = await world.database.prisma.auditEntry.findFirstOrThrow({
    where: { roomId: full.roomId, revision: day.revision },
  })
  expect(audit).toMatchObject({
    action: 'duty.take',
    userId: full.standIn.userId,
    detail: { date: tomorrow, userId: full.standIn.userId, before: null },
  })
})

test('who has the room gives it back, and another may take it over', async () => {
  await take(full.standIn, full.standIn.userId)
  expect((await take(full.caretaker, full.caretaker.userId)).body.onDuty?.name).toBe(full.caretaker.name)
  expect((await take(full.caretaker, null)).body.onDuty).toBeNull()
  expect((await take(full.caretaker, null)).status).toBe(200)
})

test('naming somebody else is for those who manage the room', async () => {
  const refused = await take(full.standIn, full.owner.userId)
  expect(refused.problem).toMatchObject({ code: 'not_allowed' })
  expect((await take(full.caretaker, full.standIn.userId)).body.onDuty?.userId).toBe(full.standIn.userId)
  await take(full.caretaker, full.owner.userId)
  expect((await take(full.standIn, null)).problem).toMatchObject({ code: 'not_allowed' })
})

test('a viewer cannot have the room, nor somebody who is not in it, nor anybody a day that is over', async () => {
  const viewer = await world.person('Looks on', { roomId: full.roomId, role: 'viewer' })
  const stranger = await world.person('From elsewhere')
  expect((await take(full.owner, viewer.userId)).problem).toMatchObject({ code: 'wrong_state' })
  expect((await take(full.owner, stranger.userId)).problem).toMatchObject({ code: 'not_found' })
  expect((await take(full.owner, full.owner.userId, '2026-01-31')).problem).toMatchObject({ code: 'wrong_state' })
  expect((await take(full.owner, full.owner.userId, '2026-02-30')).problem).toMatchObject({ code: 'invalid_input' })
})

test('a person who leaves the room has no day of it any more', async () => {
  const guest = await world.person('Helps out', { roomId: full.roomId, role: 'stand_in' })
  await take(guest, guest.userId)
  await world.ok(full.owner, 'removePerson', { params: { roomId: full.roomId, userId: guest.userId } })
  expect((await dayOf()).onDuty).toBeNull()
})

test('who becomes a viewer has no day of the room any more, until they may sign off again', async () => {
  const guest = await world.person('Comes and goes', { roomId: full.roomId, role: 'stand_in' })
  await take(guest, guest.userId)
  const become = (role: 'viewer' | 'stand_in') =>
    world.ok(full.owner, 'changeRole', { params: { roomId: full.roomId, userId: guest.userId }, body: { role } })
  await become('viewer')
  expect((await dayOf()).onDuty).toBeNull()
  await become('stand_in')
  expect((await dayOf()).onDuty?.userId).toBe(guest.userId)
})
