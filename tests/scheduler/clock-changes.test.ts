import { afterAll, beforeAll, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { openClockRoom, openedDates, stateOf, tickNow } from './room-clock.ts'

let world: World
beforeAll(async () => {
  world = await openWorld({ at: '2026-03-01T08:00:00.000Z' })
})
afterAll(() => world.close())

const rounds = [
  { id: 'night', name: 'Night', at: '01:30' },
  { id: 'morning', name: 'Morning', at: '07:00' },
  { id: 'evening', name: 'Evening', at: '18:30' },
]

/** Ticks every half hour over a stretch of time, as a scheduler would; the dates opened, and how often each. */
async function runThrough(from: string, to: string): Promise<void> {
  for (let at = Date.parse(from); at <= Date.parse(to); at += 30 * 60_000) {
    world.clock.set(new Date(at).toISOString())
    await tickNow(world)
  }
}

async function keysAreUnique(roomId: string): Promise<void> {
  const keys = (await world.database.prisma.task.findMany({ where: { roomId } })).map((task) => task.key)
  expect(keys.length).toBeGreaterThan(0)
  expect(new Set(keys).size).toBe(keys.length)
}

test('the night that has no half past one (Lisbon, 29 March 2026) has its rounds all the same, moved on by the change', async () => {
  world.clock.set('2026-03-28T08:00:00.000Z')
  const { roomId, day } = await openClockRoom(world, { name: 'Spring', timeZone: 'Europe/Lisbon', rounds })
  await runThrough('2026-03-28T22:00:00Z', '2026-03-30T02:00:00Z')
  expect(await openedDates(world, roomId)).toEqual(['2026-03-28', '2026-03-29', '2026-03-30', '2026-03-31'])
  // Clocks jump from 01:00 to 02:00 at 01:00 UTC: half past one is 02:30 summer time.
  const short = await day('2026-03-29')
  expect(short.rounds.map((round) => round.startsAt)).toEqual([
    '2026-03-29T01:30:00.000Z',
    '2026-03-29T06:00:00.000Z',
    '2026-03-29T17:30:00.000Z',
  ])
  // The day has 23 hours: it ends at 23:00 UTC.
  const ends = new Set(short.tasks.map((task) => task.closesAt))
  for (const end of ends) expect(end <= '2026-03-29T23:00:00.000Z').toBe(true)
  expect(short.tasks.filter((task) => task.state === 'open')).toEqual([])
  await keysAreUnique(roomId)
})

test('the night that has half past one twice (Lisbon, 25 October 2026) has each round once', async () => {
  world.clock.set('2026-10-24T08:00:00.000Z')
  const { roomId, day } = await openClockRoom(world, { name: 'Autumn', timeZone: 'Europe/Lisbon', rounds })
  await runThrough('2026-10-24T22:00:00Z', '2026-10-26T02:00:00Z')
  expect(await openedDates(world, roomId)).toEqual(['2026-10-24', '2026-10-25', '2026-10-26', '2026-10-27'])
  // Clocks go from 02:00 back to 01:00 at 01:00 UTC: the first of the two half past ones counts.
  const long = await day('2026-10-25')
  expect(long.rounds.map((round) => round.startsAt)).toEqual([
    '2026-10-25T00:30:00.000Z',
    '2026-10-25T07:00:00.000Z',
    '2026-10-25T18:30:00.000Z',
  ])
  // The day has 25 hours: it began at 23:00 UTC and ends at midnight UTC.
  const last = long.tasks
    .map((task) => task.closesAt)
    .sort()
    .at(-1)
  expect(last).toBe('2026-10-26T00:00:00.000Z')
  await keysAreUnique(roomId)
})

test('the hour that comes twice opens and closes nothing twice', async () => {
  world.clock.set('2026-10-24T08:00:00.000Z')
  const { roomId } = await openClockRoom(world, { name: 'Twice', timeZone: 'Europe/Lisbon' })
  world.clock.set('2026-10-25T00:30:00.000Z') // 01:30, the first time
  await tickNow(world)
  const after = await stateOf(world, roomId)
  world.clock.set('2026-10-25T01:30:00.000Z') // 01:30 again
  await tickNow(world)
  expect(await stateOf(world, roomId)).toEqual(after)
})

test('a date without midnight (Cairo, 24 April 2026) begins at one and is opened then', async () => {
  // Egypt's clocks jump from 00:00 to 01:00 on the last Friday of April: 22:00 UTC on the 23rd.
  world.clock.set('2026-04-22T08:00:00.000Z')
  const { roomId, day } = await openClockRoom(world, { name: 'Cairo', timeZone: 'Africa/Cairo' })
  world.clock.set('2026-04-23T21:59:00.000Z')
  await tickNow(world)
  expect((await day('today')).date).toBe('2026-04-23')
  world.clock.set('2026-04-23T22:00:00.000Z')
  expect(await tickNow(world)).toContain(roomId)
  const today = await day('today')
  expect([today.date, today.isOpened]).toEqual(['2026-04-24', true])
  expect(today.rounds[0]!.startsAt).toBe('2026-04-24T04:00:00.000Z')
  expect((await openedDates(world, roomId)).at(-1)).toBe('2026-04-25')
  // The day before ended there, so what was open of it is missed.
  const yesterday = await day('2026-04-23')
  expect(yesterday.tasks.length).toBeGreaterThan(0)
  expect(yesterday.tasks.filter((task) => task.state === 'open')).toEqual([])
  for (const task of yesterday.tasks) expect(task.closesAt <= '2026-04-23T22:00:00.000Z').toBe(true)
})

test('a room that moves to another zone has its lists drawn up by the new one', async () => {
  world.clock.set('2026-05-01T08:00:00.000Z')
  const { roomId, owner, room, day } = await openClockRoom(world, { name: 'Moves', timeZone: 'Europe/Lisbon' })
  world.clock.set('2026-05-02T12:30:00.000Z')
  await tickNow(world)
  await world.ok(owner, 'changeRoom', {
    params: { roomId },
    body: { timeZone: 'Pacific/Auckland', version: room.version },
  })
  // Half past midnight on the 3rd in Auckland.
  const today = await day('today')
  expect([today.date, today.isOpened]).toEqual(['2026-05-03', true])
  expect(today.rounds[0]!.startsAt).toBe('2026-05-02T19:00:00.000Z')
  for (const task of today.tasks.filter((each) => each.state === 'open'))
    expect(task.dueAt >= '2026-05-02T19:00:00.000Z').toBe(true)
  await tickNow(world)
  await keysAreUnique(roomId)
})
