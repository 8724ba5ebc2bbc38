import { randomUUID } from 'node:crypto'
import { sweep, tick } from '@fryward/scheduler'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { keptLog, openClockRoom, openedDates, stateOf, tickNow } from './room-clock.ts'

let world: World
beforeEach(async () => {
  world = await openWorld({ at: '2026-03-10T08:00:00.000Z' })
})
afterEach(() => world.close())

test("each room's today and tomorrow are opened by its own clock", async () => {
  const auckland = await openClockRoom(world, { name: 'South', timeZone: 'Pacific/Auckland' })
  const angeles = await openClockRoom(world, { name: 'West', timeZone: 'America/Los_Angeles' })
  // 11:30 UTC on the 20th: half past midnight on the 21st in Auckland (+13), half past four on the 20th in California (-7).
  world.clock.set('2026-03-20T11:30:00.000Z')
  expect((await tickNow(world)).sort()).toEqual([auckland.roomId, angeles.roomId].sort())
  expect((await openedDates(world, auckland.roomId)).slice(-2)).toEqual(['2026-03-21', '2026-03-22'])
  expect((await openedDates(world, angeles.roomId)).slice(-2)).toEqual(['2026-03-20', '2026-03-21'])
  const [south, west] = [await auckland.day('today'), await angeles.day('today')]
  expect([south.date, west.date]).toEqual(['2026-03-21', '2026-03-20'])
  expect(south.isOpened && west.isOpened).toBe(true)
  // 07:00 in each room.
  expect(south.rounds[0]!.startsAt).toBe('2026-03-20T18:00:00.000Z')
  expect(west.rounds[0]!.startsAt).toBe('2026-03-20T14:00:00.000Z')
  expect(south.tasks.length).toBeGreaterThan(0)
  for (const task of south.tasks) expect(task.onDate).toBe('2026-03-21')
})

test('a list is opened at the room’s midnight, not a minute before', async () => {
  const room = await openClockRoom(world, { timeZone: 'Pacific/Auckland' })
  world.clock.set('2026-03-20T10:59:00.000Z')
  await tickNow(world)
  expect((await openedDates(world, room.roomId)).at(-1)).toBe('2026-03-21')
  world.clock.set('2026-03-20T11:00:00.000Z')
  expect(await tickNow(world)).toEqual([room.roomId])
  expect((await openedDates(world, room.roomId)).at(-1)).toBe('2026-03-22')
})

test('a second tick changes nothing', async () => {
  const { roomId } = await openClockRoom(world, {})
  world.clock.set('2026-03-11T00:05:00.000Z')
  expect(await tickNow(world)).toEqual([roomId])
  const after = await stateOf(world, roomId)
  expect(await tickNow(world)).toEqual([])
  world.clock.advanceMinutes(1)
  expect(await tickNow(world)).toEqual([])
  expect(await stateOf(world, roomId)).toEqual(after)
})

test('many schedulers at the same instant write what one would, as one revision', async () => {
  const first = await openClockRoom(world, { name: 'One' })
  const second = await openClockRoom(world, { name: 'Two', timeZone: 'Asia/Tokyo' })
  world.clock.set('2026-03-11T00:05:00.000Z')
  const revisions = async () =>
    (await world.database.prisma.room.findMany({ orderBy: { id: 'asc' } })).map((room) => room.revision)
  const before = await revisions()
  const written = await Promise.all(Array.from({ length: 4 }, () => tickNow(world)))
  expect(written.flat().sort()).toEqual([first.roomId, second.roomId].sort())
  expect(await revisions()).toEqual(before.map((revision) => revision + 1))
  for (const { roomId } of [first, second]) {
    const keys = (await world.database.prisma.task.findMany({ where: { roomId } })).map((task) => task.key)
    expect(new Set(keys).size).toBe(keys.length)
    const after = await stateOf(world, roomId)
    await tickNow(world)
    expect(await stateOf(world, roomId)).toEqual(after)
  }
})

test('an open task whose window has passed is closed as missed, and what was done or skipped stays', async () => {
  const { roomId, owner, day } = await openClockRoom(world, {})
  world.clock.set('2026-03-11T08:00:00.000Z')
  await tickNow(world)
  const [done, skipped, ...left] = (await day('today')).tasks.filter(
    (task) => task.state === 'open' && task.fields.every((field) => !field.isRequired),
  )
  await world.ok(owner, 'signOffTask', { params: { roomId, taskId: done!.id }, body: {} })
  await world.ok(owner, 'skipTask', { params: { roomId, taskId: skipped!.id }, body: { reason: 'no need today' } })
  world.clock.set('2026-03-12T00:00:00.000Z')
  await tickNow(world)
  const states = new Map((await day('2026-03-11')).tasks.map((task) => [task.id, task]))
  expect(states.get(done!.id)?.state).toBe('done')
  expect(states.get(skipped!.id)?.state).toBe('skipped')
  for (const task of left) {
    const now = states.get(task.id)!
    if (now.closesAt <= world.clock.now() && now.state !== 'withdrawn')
      expect(now).toMatchObject({ state: 'missed', reason: 'Not done by the end of its time.' })
  }
  expect([...states.values()].filter((task) => task.state === 'missed').length).toBeGreaterThan(0)
  expect([...states.values()].filter((task) => task.state === 'open' && task.closesAt <= world.clock.now())).toEqual([])
  const { entries } = await world.ok(owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })
  expect(entries[0]).toMatchObject({ action: 'day.open', actor: { kind: 'system', job: 'scheduler' } })
})

test('a late task stays open and shows as late until its window ends', async () => {
  const { day } = await openClockRoom(world, {})
  world.clock.set('2026-03-11T22:30:00.000Z')
  await tickNow(world)
  const late = (await day('today')).tasks.filter((task) => task.state === 'open' && task.lateAt <= world.clock.now())
  expect(late.length).toBeGreaterThan(0)
})

test('after three days off the open tasks are missed, the days between stay without a list, and today is opened', async () => {
  const { roomId, day } = await openClockRoom(world, {})
  world.clock.set('2026-03-15T09:00:00.000Z')
  expect(await tickNow(world)).toEqual([roomId])
  expect(await openedDates(world, roomId)).toEqual(['2026-03-10', '2026-03-11', '2026-03-15', '2026-03-16'])
  for (const date of ['2026-03-10', '2026-03-11'])
    expect((await day(date)).tasks.filter((task) => task.state === 'open')).toEqual([])
  for (const date of ['2026-03-12', '2026-03-13', '2026-03-14']) {
    const empty = await day(date)
    expect([empty.isOpened, empty.tasks]).toEqual([false, []])
  }
  expect((await day('today')).tasks.filter((task) => task.state === 'open').length).toBeGreaterThan(0)
  expect(await tickNow(world)).toEqual([])
})

test('a clock that goes back reopens nothing and doubles nothing', async () => {
  const { roomId } = await openClockRoom(world, {})
  world.clock.set('2026-03-11T08:00:00.000Z')
  await tickNow(world)
  world.clock.set('2026-03-12T08:00:00.000Z')
  await tickNow(world)
  const after = await stateOf(world, roomId)
  for (const back of ['2026-03-12T07:59:59.000Z', '2026-03-11T23:00:00.000Z', '2026-03-11T08:00:00.000Z']) {
    world.clock.set(back)
    expect(await tickNow(world)).toEqual([])
    expect(await stateOf(world, roomId)).toEqual(after)
  }
  world.clock.set('2026-03-12T08:01:00.000Z')
  expect(await tickNow(world)).toEqual([])
  expect(await stateOf(world, roomId)).toEqual(after)
})

test('a day worked out again under a clock that went back leaves missed tasks missed', async () => {
  const { roomId, owner, room } = await openClockRoom(world, {})
  world.clock.set('2026-03-11T08:00:00.000Z')
  await tickNow(world)
  world.clock.set('2026-03-12T00:30:00.000Z')
  await tickNow(world)
  const missed = async () =>
    (await world.database.prisma.task.findMany({ where: { roomId, state: 'missed' }, orderBy: { key: 'asc' } })).map(
      (task) => task.key,
    )
  const before = await missed()
  expect(before.length).toBeGreaterThan(0)
  world.clock.set('2026-03-11T20:00:00.000Z')
  await world.ok(owner, 'changeRoom', { params: { roomId }, body: { salinity: 34, version: room.version } })
  expect(await missed()).toEqual(before)
})

test('one failing room does not hold up the others, and catches up when it is mended', async () => {
  const rooms = [
    await openClockRoom(world, { name: 'A' }),
    await openClockRoom(world, { name: 'B' }),
    await openClockRoom(world, { name: 'C' }),
  ]
  const broken = [...rooms].sort((a, b) => (a.roomId < b.roomId ? -1 : 1))[0]!
  const { prisma } = world.database
  await prisma.room.update({ where: { id: broken.roomId }, data: { rounds: [] } })
  world.clock.set('2026-03-11T00:05:00.000Z')
  const log = keptLog()
  const written = await tick({ database: world.database, now: world.clock.now, log })
  const others = rooms.filter((each) => each !== broken).map((each) => each.roomId)
  expect(written.sort()).toEqual(others.sort())
  expect(log.warnings).toMatchObject([{ detail: { roomId: broken.roomId } }])
  await prisma.room.update({ where: { id: broken.roomId }, data: { rounds: broken.room.rounds } })
  expect(await tickNow(world)).toEqual([broken.roomId])
})

test('the sweep forgets answers older than 30 days and says how many', async () => {
  const { roomId, owner } = await openClockRoom(world, {})
  await world.ok(owner, 'recordFact', {
    params: { roomId },
    body: { kind: 'observation', subjectId: roomId, data: { note: 'all quiet' } },
    key: 'swept-in-thirty-days',
  })
  const told: object[] = []
  const log = { warn: () => undefined, info: (detail: object) => told.push(detail) }
  const days = (number: number) =>
    world.clock.set(new Date(Date.parse('2026-03-10T08:00:00Z') + number * 86_400_000).toISOString())
  days(29)
  await sweep({ database: world.database, now: world.clock.now, log })
  expect(told).toEqual([])
  days(31)
  await sweep({ database: world.database, now: world.clock.now, log })
  expect(told).toEqual([{ forgotten: 1 }])
})

test('the sweep forgets what opens nothing any more, and tries to sign in after 90 days', async () => {
  const { prisma } = world.database
  const person = await world.person('Long gone')
  const now = '2026-06-10T08:00:00.000Z'
  const daysAgo = (days: number) => new Date(Date.parse(now) - days * 86_400_000)
  for (const days of [89, 91])
    await prisma.signInTry.create({
      data: {
        id: randomUUID(),
        at: daysAgo(days),
        email: `${days}@example.test`,
        address: '',
        outcome: 'signed_in',
        isKnown: false,
      },
    })
  const times = { createdAt: daysAgo(40), updatedAt: daysAgo(40) }
  for (const [id, days] of [
    ['ended', 1],
    ['open', -1],
  ] as const) {
    const expiresAt = daysAgo(days)
    await prisma.session.create({ data: { id, userId: person.userId, token: id, expiresAt, ...times } })
    await prisma.verification.create({ data: { id, identifier: id, value: '', expiresAt, ...times } })
    await prisma.rateLimit.create({ data: { id, key: id, count: 3, lastRequest: daysAgo(days * 2).getTime() } })
  }
  await sweep({ database: world.database, now: () => now, log: { warn: () => undefined, info: () => undefined } })
  const ids = async (rows: Promise<{ id: string }[]>) => (await rows).map((row) => row.id)
  expect(
    await ids(prisma.session.findMany({ where: { userId: person.userId, id: { in: ['ended', 'open'] } } })),
  ).toEqual(['open'])
  expect(await ids(prisma.verification.findMany())).toEqual(['open'])
  expect(await ids(prisma.rateLimit.findMany())).toEqual(['open'])
  expect((await prisma.signInTry.findMany()).map(({ email }) => email)).toEqual(['89@example.test'])
})
