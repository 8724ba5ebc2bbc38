import { afterAll, beforeAll, expect, test } from 'vitest'
import { type FullRoom, openFullRoom, tasksOf } from '../api/full-room.ts'
import { openRoom, openWorld, type World } from '../support/world.ts'

let world: World
let full: FullRoom

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
})
afterAll(() => world.close())

const note = (text: string, at = { roomId: full.roomId, person: full.caretaker }) =>
  world.call(at.person, 'recordFact', {
    params: { roomId: at.roomId },
    body: { kind: 'observation', subjectId: at.roomId, data: { note: text } },
  })

test('many writers and readers at the same instant are all served, one revision after the other', async () => {
  const other = await openRoom(world, { name: 'Next door' })
  const next = { roomId: other.room.id, person: other.owner }
  const revision = async (roomId: string) =>
    (await world.database.prisma.room.findUniqueOrThrow({ where: { id: roomId } })).revision
  const before = [await revision(full.roomId), await revision(next.roomId)]
  const some = Array.from({ length: 20 }, (_, index) => index)
  const answers = await Promise.all([
    ...some.map((index) => note(`here ${index}`)),
    ...some.slice(0, 8).map((index) => note(`there ${index}`, next)),
    ...some.map(() => world.call(full.viewer, 'listClutches', { params: { roomId: full.roomId } })),
    ...some.map(() => world.call(full.standIn, 'getDay', { params: { roomId: full.roomId, date: 'today' } })),
  ])
  expect(answers.filter((answer) => answer.status >= 300)).toEqual([])
  expect([await revision(full.roomId), await revision(next.roomId)]).toEqual([before[0]! + 20, before[1]! + 8])
})

test('who writes three hundred things at once waits behind themselves: others here and next door are hardly held up', async () => {
  const other = await openRoom(world, { name: 'Next door again' })
  const next = { roomId: other.room.id, person: other.owner }
  const crowded = { roomId: full.roomId, person: full.standIn }
  let done = 0
  const crowd = Array.from({ length: 300 }, async (_, index) => {
    const answer = await note(`much ${index}`, crowded)
    done += 1
    return answer
  })
  await expect.poll(() => done, { interval: 5 }).toBeGreaterThan(0)
  const before = done
  const others = await Promise.all([
    note('next door', next),
    world.call(next.person, 'getDay', { params: { roomId: next.roomId, date: 'today' } }),
    note('in the same room', { roomId: full.roomId, person: full.caretaker }),
    world.call(full.viewer, 'listTanks', { params: { roomId: full.roomId } }),
  ])
  expect(done - before).toBeLessThan(60)
  expect(others.map((answer) => answer.status)).toEqual([201, 200, 201, 200])
  const answers = await Promise.all(crowd)
  const refused = answers.filter((answer) => answer.status !== 201)
  for (const answer of refused) {
    expect(answer.problem?.code).toBe('busy')
    expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0)
  }
  expect(
    await world.database.prisma.fact.count({
      where: { roomId: full.roomId, data: { path: ['note'], string_starts_with: 'much ' } },
    }),
  ).toBe(300 - refused.length)
})

test('everybody signs the whole round off at once, and everything is booked once', async () => {
  const open = (await tasksOf(world, full.owner, full.roomId)).filter(
    (task) => task.state === 'open' && task.fields.every((field) => !field.isRequired),
  )
  expect(open.length).toBeGreaterThan(3)
  const people = [full.owner, full.caretaker, full.standIn]
  const signOff = (person: (typeof people)[number], taskId: string) =>
    world.call(person, 'signOffTask', { params: { roomId: full.roomId, taskId }, body: { confirmed: ['early'] } })
  /** Whoever is told that the room is busy, as on a slow machine, tries again. */
  const untilAnswered = async (person: (typeof people)[number], taskId: string) => {
    let answer = await signOff(person, taskId)
    while (answer.problem?.code === 'busy') answer = await signOff(person, taskId)
    return answer
  }
  const answers = await Promise.all(people.flatMap((person) => open.map(({ id }) => untilAnswered(person, id))))
  const codes = answers.map(({ status, problem }) => problem?.code ?? status).sort()
  expect(codes).toEqual([...open.map(() => 200), ...open.flatMap(() => ['already_done', 'already_done'])])
  for (const task of open)
    expect(await world.database.prisma.signOff.count({ where: { roomId: full.roomId, taskId: task.id } })).toBe(1)
})
