import { getDay, signOffTask } from '@fryward/room'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { plausibleValues } from '../api/plausible-values.ts'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

let world: World
let full: FullRoom
let roomId: string

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  roomId = full.roomId
})
afterAll(() => world.close())

const day = (date: string, person: Person = full.viewer) => getDay({ ctx: world.contextOf(person), roomId, date })
const note = (text: string) =>
  world.ok(full.owner, 'recordFact', {
    params: { roomId },
    body: { kind: 'observation', subjectId: roomId, data: { note: text } },
  })

test('today and tomorrow are the room’s own dates, and a date may be asked by its name', async () => {
  const [today, tomorrow] = [await day('today'), await day('tomorrow')]
  expect([today.date, today.today, tomorrow.date, tomorrow.today]).toEqual([
    '2026-03-12',
    '2026-03-12',
    '2026-03-13',
    '2026-03-12',
  ])
  expect(await day('2026-03-12')).toEqual(today)
  expect(today.rounds.map((round) => round.startsAt)).toEqual([
    '2026-03-12T07:00:00.000Z',
    '2026-03-12T12:30:00.000Z',
    '2026-03-12T18:30:00.000Z',
  ])
})

test('a day that nobody opened is an empty list that says so, with its rounds', async () => {
  for (const date of ['2025-01-01', '2026-03-20', '2099-12-31']) {
    const empty = await day(date)
    expect(empty).toMatchObject({ date, tasks: [], gaps: [], isOpened: false })
    expect(empty.rounds).toHaveLength(3)
  }
})

test('what several ask at the same time shares one statement, and each gets an answer of their own', async () => {
  const other = await openRoom(world, { name: 'Next door' })
  const asked = vi.spyOn(world.database.pool, 'query')
  const [mine, theirs, stranger, again] = await Promise.allSettled([
    day('today'),
    getDay({ ctx: world.contextOf(other.owner), roomId: other.room.id, date: 'today' }),
    getDay({ ctx: world.contextOf(other.owner), roomId, date: 'today' }),
    day('today', full.owner),
  ])
  const statements = asked.mock.calls.filter(([query]) => JSON.stringify(query).includes('"room-marks"'))
  asked.mockRestore()
  expect(statements).toHaveLength(1)
  expect(mine).toMatchObject({ value: { revision: (await day('today')).revision } })
  const later = await getDay({ ctx: world.contextOf(other.owner), roomId: other.room.id, date: 'today' })
  expect(theirs).toMatchObject({ value: { revision: later.revision } })
  expect(later.revision).not.toBe((await day('today')).revision)
  expect(stranger).toMatchObject({ reason: { code: 'not_found' } })
  expect(again).toEqual(mine)
})

test('tasks stand in the order of their rounds', async () => {
  const { tasks } = await day('today')
  const due = tasks.map((task) => task.dueAt)
  expect(due.length).toBeGreaterThan(5)
  expect(due).toEqual([...due].sort())
})

test('every number of a task says where it was read', async () => {
  const { tasks } = await day('today')
  for (const task of tasks.filter((each) => each.amount !== null)) {
    const { because } = await world.ok(full.owner, 'getTaskWhy', { params: { roomId, taskId: task.id } })
    expect(because.length, task.key).toBeGreaterThan(0)
    expect(
      because.every((link) => link.label !== ''),
      task.key,
    ).toBe(true)
  }
})

test('a list that was read before shows what was written since', async () => {
  const before = await day('today')
  expect((await day('today')).revision).toBe(before.revision)
  const task = before.tasks.find((each) => each.state === 'open' && each.ruleId === 'room-equipment')!
  await world.ok(full.standIn, 'signOffTask', { params: { roomId, taskId: task.id }, body: {} })
  const after = await day('today')
  expect(after.revision).toBe(before.revision + 1)
  expect(after.tasks.find((each) => each.id === task.id)).toMatchObject({
    state: 'done',
    closedByName: full.standIn.name,
  })
})

test('at midnight today is another day', async () => {
  const before = world.clock.now()
  world.clock.set('2026-03-13T00:00:00.000Z')
  expect(await day('today')).toMatchObject({ date: '2026-03-13', today: '2026-03-13' })
  expect(await day('2026-03-12')).toMatchObject({ date: '2026-03-12', today: '2026-03-13' })
  world.clock.set(before)
})

test('a list kept for one person is not for somebody who has left', async () => {
  const leaver = await world.person('Leaver', { roomId, role: 'viewer' })
  await day('today', leaver)
  await world.ok(full.owner, 'removePerson', { params: { roomId, userId: leaver.userId } })
  await expect(day('today', leaver)).rejects.toMatchObject({ code: 'not_found' })
})

test('a list never says a revision whose sign-offs it does not show', async () => {
  const open = (await day('today')).tasks.filter((task) => task.state === 'open').slice(0, 5)
  expect(open.length).toBeGreaterThan(3)
  const doneAt = new Map<string, number>()
  let isOver = false
  const seen: Awaited<ReturnType<typeof day>>[] = []
  const watch = async () => {
    while (!isOver) seen.push(await day('today'))
  }
  const watching = [watch(), watch(), watch()]
  for (const task of open) {
    await signOffTask({
      ctx: world.contextOf(full.caretaker),
      roomId,
      taskId: task.id,
      input: {
        values: plausibleValues(task),
        confirmed: task.fields.map((field) => field.name),
        again: false,
      },
    })
    doneAt.set(task.id, (await day('today')).revision)
    await note('in between')
  }
  isOver = true
  await Promise.all(watching)
  expect(new Set(seen.map((each) => each.revision)).size).toBeGreaterThan(2)
  for (const each of seen)
    for (const [id, revision] of doneAt) {
      const isDone = each.tasks.find((task) => task.id === id)?.state === 'done'
      expect([each.revision, id, isDone]).toEqual([each.revision, id, each.revision >= revision])
    }
})
