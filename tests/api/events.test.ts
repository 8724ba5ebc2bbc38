import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { type EventStream, listen, openStream } from './event-stream.ts'
import { type FullRoom, openFullRoom, tasksOf } from './full-room.ts'

let world: World
let full: FullRoom
let address: string
const streams: EventStream[] = []

beforeAll(async () => {
  // So patient that no heartbeat, which looks for news too, brings what a notice should have brought.
  world = await openWorld({ patienceMs: 3_600_000 })
  full = await openFullRoom(world)
  address = await listen(world)
})
afterEach(() => {
  for (const stream of streams.splice(0)) stream.close()
})
afterAll(() => world.close())

async function follow(person: Person | null, more: { lastEventId?: string | number; roomId?: string } = {}) {
  const stream = await openStream({ address, person, roomId: full.roomId, ...more })
  streams.push(stream)
  return stream
}
const note = (person: Person, text: string, roomId = full.roomId) =>
  world.ok(person, 'recordFact', {
    params: { roomId },
    body: { kind: 'observation', subjectId: roomId, data: { note: text } },
  })
const revision = async (roomId = full.roomId) =>
  (await world.database.prisma.room.findUniqueOrThrow({ where: { id: roomId } })).revision
const idsOf = (stream: EventStream) => stream.events.map(({ id }) => Number(id))
const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, index) => from + index)

test("what one person does is on the other's screen at once", async () => {
  const stream = await follow(full.owner)
  const task = (await tasksOf(world, full.standIn, full.roomId)).find((each) => each.ruleId === 'room-equipment')!
  await world.ok(full.standIn, 'signOffTask', { params: { roomId: full.roomId, taskId: task.id }, body: {} })
  await stream.until((events) => events.length > 0)
  expect(stream.events[0]!.event).toEqual({
    revision: await revision(),
    actions: ['task.sign_off'],
    byName: full.standIn.name,
    subjectIds: [full.roomId],
  })
})

test('the id of an event is its revision, and ids grow by one with every write', async () => {
  const stream = await follow(full.viewer)
  const before = await revision()
  await Promise.all([1, 2, 3, 4, 5].map((number) => note(full.caretaker, `at once ${number}`)))
  await stream.until((events) => events.length >= 5)
  expect(idsOf(stream)).toEqual(range(before + 1, before + 5))
  for (const { id, event } of stream.events) expect(event.revision).toBe(Number(id))
})

test('a phone that was away gets what it missed, once and in order, while more is written', async () => {
  const first = await follow(full.caretaker)
  await note(full.owner, 'before the gap')
  await first.until((events) => events.length === 1)
  first.close()
  const lastEventId = first.events[0]!.id
  for (const text of ['missed 1', 'missed 2', 'missed 3']) await note(full.owner, text)
  const [second] = await Promise.all([
    follow(full.caretaker, { lastEventId }),
    ...[1, 2, 3].map((number) => note(full.standIn, `while it comes back ${number}`)),
  ])
  const newest = await revision()
  await second.until((events) => events.at(-1)?.event.revision === newest)
  expect(idsOf(second)).toEqual(range(Number(lastEventId) + 1, newest))
})

test('a phone that was away for over a thousand writes gets them all without waiting', async () => {
  const lastEventId = await revision()
  const many = 1234
  const { pool } = world.database
  await pool.query(
    `INSERT INTO audit_entry (room_id, revision, ordinal, at, actor_name, action, detail)
     SELECT $1, $2::int + step, part, $3, 'test', 'test.part_' || part, '{}'
     FROM generate_series(1, ${many}) AS step, generate_series(1, 3) AS part`,
    [full.roomId, lastEventId, world.clock.now()],
  )
  await pool.query('UPDATE room SET revision = revision + $2 WHERE id = $1', [full.roomId, many])
  const stream = await follow(full.owner, { lastEventId })
  await stream.until((events) => events.length >= many)
  expect(idsOf(stream)).toEqual(range(lastEventId + 1, lastEventId + many))
  for (const { event } of stream.events) expect(event.actions).toEqual(['test.part_1', 'test.part_2', 'test.part_3'])
})

test.each(['', 'nonsense', '-1', '1.5', '99999999999', '1e3'])(
  'a Last-Event-ID that is no revision ("%s") starts from now',
  async (lastEventId) => {
    const stream = await follow(full.owner, { lastEventId })
    expect(stream.status).toBe(200)
    await note(full.owner, 'from now')
    await stream.until((events) => events.length > 0)
    expect(idsOf(stream)).toEqual([await revision()])
  },
)

test('a Last-Event-ID from the future still hears the next event', async () => {
  const stream = await follow(full.owner, { lastEventId: (await revision()) + 1000 })
  await note(full.owner, 'the next one')
  await stream.until((events) => events.length > 0)
  expect(idsOf(stream)).toEqual([await revision()])
})

test('a room hears nothing of another', async () => {
  const other = await openRoom(world, { name: 'Next door' })
  const stream = await follow(other.owner, { roomId: other.room.id })
  await note(full.owner, 'not for next door')
  await note(other.owner, 'for next door', other.room.id)
  await stream.until((events) => events.length > 0)
  expect(idsOf(stream)).toEqual([await revision(other.room.id)])
})

test('whoever is taken out of the room hears nothing more, and the stream ends', async () => {
  const leaver = await world.person('Leaver', { roomId: full.roomId, role: 'caretaker' })
  const stream = await follow(leaver)
  await world.ok(full.owner, 'removePerson', { params: { roomId: full.roomId, userId: leaver.userId } })
  await stream.ended()
  expect(stream.events).toEqual([])
  expect((await follow(leaver)).status).toBe(404)
})

test('whoever signs out hears nothing more, and the stream ends', async () => {
  const leaver = await world.person('Signs out', { roomId: full.roomId, role: 'viewer' })
  const stream = await follow(leaver)
  await world.app.inject({
    method: 'POST',
    url: '/api/auth/sign-out',
    headers: { host: 'localhost:3000', cookie: leaver.cookie, origin: 'http://localhost:3000' },
    payload: {},
  })
  await note(full.owner, 'after the sign-out')
  await stream.ended()
  expect(stream.events).toEqual([])
})

test('a session that is ended elsewhere, by whatever process, is told so', async () => {
  const phone = await world.person('Left behind', { roomId: full.roomId, role: 'viewer' })
  const [stream, other] = [await follow(phone), await follow(full.owner)]
  // As another process does it: a row is gone.
  await world.database.prisma.session.deleteMany({ where: { userId: phone.userId } })
  await stream.ended()
  expect(stream.isSignedOut()).toBe(true)
  await note(full.owner, 'to whoever is still in')
  await other.until((events) => events.length > 0)
  expect(other.isSignedOut()).toBe(false)
})

test('a stranger is asked to sign in, and another room is not found', async () => {
  const neighbour = (await openRoom(world, { name: 'Further down' })).owner
  expect((await follow(null)).status).toBe(401)
  expect((await follow(neighbour)).status).toBe(404)
  expect((await follow(full.owner, { roomId: 'not-an-id' })).status).toBe(400)
})

test('when the listening connection is lost, nothing that happens meanwhile is', async () => {
  const stream = await follow(full.owner)
  const before = await revision()
  const { rows } = await world.database.pool.query<{ ended: boolean }>(
    `SELECT pg_terminate_backend(pid) AS ended FROM pg_stat_activity
     WHERE datname = current_database() AND query LIKE 'LISTEN%'`,
  )
  expect(rows).toEqual([{ ended: true }])
  await note(full.caretaker, 'while nobody listens 1')
  await note(full.caretaker, 'while nobody listens 2')
  await stream.until((events) => events.length >= 2)
  expect(idsOf(stream)).toEqual([before + 1, before + 2])
})
