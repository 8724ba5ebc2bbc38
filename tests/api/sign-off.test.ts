import { tick } from '@fryward/scheduler'
import { earlyFeedName, type Fact, type Task } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { openWorld, type Person, type World } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { type FullRoom, minutesFrom, openFullRoom, tasksOf } from './full-room.ts'
import { countOf, plausibleValues } from './plausible-values.ts'

let world: World
let full: FullRoom
let roomId: string

const startsAt = '2026-03-10T08:00:00.000Z'

beforeAll(async () => {
  world = await openWorld({ at: startsAt })
})
afterAll(() => world.close())
beforeEach(async () => {
  world.clock.set(startsAt)
  full = await openFullRoom(world)
  roomId = full.roomId
  await nextMorning()
})

const log = {
  info: () => undefined,
  warn: (detail: object) => {
    throw new Error(`A room could not be worked out: ${JSON.stringify(detail)}`, { cause: detail })
  },
}
async function nextMorning(): Promise<void> {
  world.clock.advanceMinutes(1440)
  await tick({ database: world.database, now: world.clock.now, log })
}

const list = () => tasksOf(world, full.owner, roomId)
async function taskWhere(isWanted: (task: Task) => boolean): Promise<Task> {
  const tasks = await list()
  const found = tasks.find((task) => task.state === 'open' && isWanted(task))
  if (!found)
    throw new Error(`No such open task among ${tasks.map((task) => `${task.ruleId} ${task.state}`).join(', ')}`)
  return found
}
const ofRule = (ruleId: string) => taskWhere((task) => task.ruleId === ruleId)
/** A task whose sign-off writes a fact and asks for nothing. */
const simple = () => ofRule('room-equipment')
const counting = () => ofRule('rotifer-count')

const signOff = (person: Person, task: Task, body: object = {}) =>
  world.call(person, 'signOffTask', {
    params: { roomId, taskId: task.id },
    body: { values: plausibleValues(task), shownAmount: task.amount, ...body },
  })
const undo = (person: Person, task: Task) =>
  world.call(person, 'undoTask', { params: { roomId, taskId: task.id }, body: {} })
const skip = (person: Person, task: Task, reason = 'no time for it today') =>
  world.call(person, 'skipTask', { params: { roomId, taskId: task.id }, body: { reason } })
async function factsOf(task: Task): Promise<Fact[]> {
  const { facts } = await world.ok(full.owner, 'listFacts', { params: { roomId }, query: { limit: 500 } })
  return facts.filter((fact) => fact.taskId === task.id)
}
const again = async (task: Task) => world.ok(full.owner, 'getTask', { params: { roomId, taskId: task.id } })

test('a sign-off closes the task, writes its records and leaves an audit row, as one step of the room', async () => {
  const task = await counting()
  const before = await world.ok(full.owner, 'getRoom', { params: { roomId } })
  const doneAt = minutesFrom(world, -20)
  const answer = await signOff(full.caretaker, task, { doneAt })
  expect(answer.status).toBe(200)
  expect(answer.body.state).toBe('done')
  expect(answer.body.closedByName).toBe(full.caretaker.name)
  expect(answer.body.signOffs).toMatchObject([
    { byUserId: full.caretaker.userId, doneAt, receivedAt: world.clock.now(), isRepeat: false, isAfterTheFact: false },
  ])
  const facts = await factsOf(task)
  expect(facts.map((fact) => fact.kind)).toContain('count')
  for (const fact of facts) {
    expect(fact).toMatchObject({ at: doneAt, receivedAt: world.clock.now(), recordedByName: full.caretaker.name })
    expect(fact.revision).toBe(before.revision + 1)
  }
  const { entries } = await world.ok(full.owner, 'listAudit', { params: { roomId }, query: { limit: 5 } })
  const written = entries.filter((entry) => entry.revision === before.revision + 1)
  expect(written.map((entry) => entry.action)).toEqual(['task.sign_off'])
  expect(written[0]).toMatchObject({
    actor: { kind: 'person', userId: full.caretaker.userId },
    subjectId: task.subject.id,
    detail: { taskId: task.id, ruleId: task.ruleId },
  })
})

test('the day is worked out again, and a task with a new amount keeps the old one', async () => {
  const task = await counting()
  const field = task.fields.find((each) => each.type === 'count')
  if (field?.type !== 'count') throw new Error('The counting task asks for no count')
  const before = new Map((await list()).map((each) => [each.id, each]))
  const values = { [field.name]: countOf(field, 3 * (field.usual ?? 87)) }
  await signOff(full.owner, task, { values, confirmed: [field.name] })
  const moved = (await list()).filter((each) => {
    const was = before.get(each.id)
    return was?.state === 'open' && each.state === 'open' && was.amount?.value !== each.amount?.value
  })
  expect(moved.length).toBeGreaterThan(0)
  for (const each of moved) {
    const was = before.get(each.id)!
    expect(each.changes).toHaveLength(was.changes.length + 1)
    expect(each.changes.at(-1)).toMatchObject({ at: world.clock.now(), from: was.amount, to: each.amount })
    expect(each.changes.at(-1)!.why).not.toBe('')
    expect(each.version).toBeGreaterThan(was.version)
  }
})

test('values that the task does not ask for, or cannot take, are refused by name and nothing is written', async () => {
  const task = await counting()
  const name = task.fields.find((field) => field.type === 'count')!.name
  const before = await fingerprintOf(world, roomId)
  const wrong: [Record<string, unknown>, string][] = [
    [{}, name],
    [{ ...plausibleValues(task), unheardOf: 1 }, 'unheardOf'],
    [{ [name]: 80 }, name],
    [{ [name]: { animals: [80] } }, name],
    [{ [name]: { animals: [], volumeMl: 1 } }, name],
    [{ [name]: { animals: [-1], volumeMl: 1 } }, name],
    [{ [name]: { animals: [80], volumeMl: 0 } }, name],
    [{ [name]: { animals: [100_000], volumeMl: 0.001, dilution: 10_000 } }, name],
  ]
  for (const [values, field] of wrong) {
    const answer = await signOff(full.owner, task, { values, confirmed: [name] })
    expect([answer.status, answer.problem?.code], JSON.stringify(values)).toEqual([400, 'invalid_input'])
    expect(answer.problem?.fields?.map((each) => each.path.split('.')[1])).toContain(field)
  }
  expect(await fingerprintOf(world, roomId)).toEqual(before)
})

test('an improbable value asks for a second look, and is taken when it is confirmed', async () => {
  const task = await counting()
  const field = task.fields.find((each) => each.type === 'count')
  if (field?.type !== 'count') throw new Error('The counting task asks for no count')
  const values = { [field.name]: countOf(field, (field.likelyMaximum + field.maximum) / 2) }
  const before = await fingerprintOf(world, roomId)
  const doubted = await signOff(full.owner, task, { values })
  expect([doubted.status, doubted.problem?.code]).toEqual([422, 'needs_confirmation'])
  expect(doubted.problem?.fields?.map((each) => each.path)).toEqual([`values.${field.name}`])
  expect(await fingerprintOf(world, roomId)).toEqual(before)
  expect((await signOff(full.owner, task, { values, confirmed: [field.name] })).status).toBe(200)
})

test('of two people at the same instant one is booked, and the other is told who was first', async () => {
  const task = await counting()
  const people = [full.caretaker, full.standIn]
  const answers = await Promise.all(people.map((person) => signOff(person, task)))
  expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409])
  const loser = answers.find((answer) => answer.status === 409)!
  const winner = people[answers.findIndex((answer) => answer.status === 200)]!
  expect(loser.problem?.code).toBe('already_done')
  expect(loser.problem?.detail).toContain(winner.name)
  expect(loser.problem?.current).toMatchObject({ id: task.id, state: 'done', closedByName: winner.name })
  expect(await world.database.prisma.signOff.count({ where: { roomId, taskId: task.id } })).toBe(1)
  expect((await factsOf(task)).filter((fact) => fact.kind === 'count')).toHaveLength(1)
})

test('what two people really did is recorded twice when the second says so', async () => {
  const task = await ofRule('rotifer-feed')
  await signOff(full.caretaker, task)
  const facts = await factsOf(task)
  world.clock.advanceMinutes(3)
  expect((await signOff(full.standIn, task)).problem?.code).toBe('already_done')
  const answer = await signOff(full.standIn, task, { again: true })
  expect(answer.status).toBe(200)
  expect(answer.body.signOffs.map((each) => [each.byUserId, each.isRepeat])).toEqual([
    [full.caretaker.userId, false],
    [full.standIn.userId, true],
  ])
  expect(await factsOf(task)).toHaveLength(2 * facts.length)
})

test('taking back the second of two sign-offs leaves the first standing', async () => {
  const task = await ofRule('rotifer-feed')
  await signOff(full.caretaker, task)
  const first = (await factsOf(task)).map((fact) => fact.id)
  world.clock.advanceMinutes(3)
  await signOff(full.standIn, task, { again: true })
  const answer = await undo(full.standIn, task)
  expect(answer.body.state).toBe('done')
  for (const fact of await factsOf(task)) expect(fact.struckAt === null).toBe(first.includes(fact.id))
})

test('a skip says why, writes no record, and only an open task is skipped', async () => {
  const task = await simple()
  expect((await skip(full.standIn, task, 'x')).problem?.code).toBe('invalid_input')
  const answer = await skip(full.standIn, task, 'the pumps were looked at')
  expect(answer.body).toMatchObject({
    state: 'skipped',
    reason: 'the pumps were looked at',
    closedByName: full.standIn.name,
  })
  expect(await factsOf(task)).toEqual([])
  const { entries } = await world.ok(full.owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })
  expect(entries[0]).toMatchObject({
    action: 'task.skip',
    detail: { taskId: task.id, reason: 'the pumps were looked at' },
  })
  const twice = await skip(full.owner, task)
  expect([twice.status, twice.problem?.code]).toEqual([409, 'wrong_state'])
  expect(twice.problem?.current).toMatchObject({ state: 'skipped' })
})

test('a skip is taken back within a quarter of an hour', async () => {
  const task = await simple()
  await skip(full.caretaker, task)
  world.clock.advanceMinutes(15)
  const answer = await undo(full.caretaker, task)
  expect(answer.body).toMatchObject({ state: 'open', reason: null, closedByName: null })
})

test('taking a sign-off back strikes its records out, opens the task and gives the list as it was', async () => {
  const said = (tasks: Task[]) =>
    tasks.map(({ id, state, amount, title, steps }) => ({ id, state, amount, title, steps }))
  const task = await counting()
  const before = said(await list())
  await signOff(full.caretaker, task)
  expect(said(await list())).not.toEqual(before)
  world.clock.advanceMinutes(15)
  const answer = await undo(full.caretaker, task)
  expect(answer.status).toBe(200)
  expect(answer.body.state).toBe('open')
  expect(answer.body.signOffs.map((each) => each.undoneAt)).toEqual([world.clock.now()])
  for (const fact of await factsOf(task))
    expect(fact).toMatchObject({ struckAt: world.clock.now(), struckByName: full.caretaker.name })
  expect(said(await list())).toEqual(before)
  const { entries } = await world.ok(full.owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })
  expect(entries[0]).toMatchObject({ action: 'task.undo', detail: { taskId: task.id } })
  expect((await signOff(full.owner, task)).status).toBe(200)
})

test('after sixteen minutes it is too late to take back', async () => {
  const task = await counting()
  await signOff(full.caretaker, task)
  world.clock.advanceMinutes(16)
  const answer = await undo(full.caretaker, task)
  expect([answer.status, answer.problem?.code]).toEqual([409, 'too_late_to_undo'])
  expect((await factsOf(task)).every((fact) => fact.struckAt === null)).toBe(true)
})

test('the quarter of an hour counts from when we heard of it', async () => {
  const task = await simple()
  await signOff(full.caretaker, task, { doneAt: minutesFrom(world, -60) })
  world.clock.advanceMinutes(14)
  expect((await undo(full.caretaker, task)).status).toBe(200)
})

test("a stand-in takes back their own sign-off, not another's; a caretaker takes back both", async () => {
  const task = await simple()
  await signOff(full.caretaker, task)
  expect((await undo(full.standIn, task)).problem?.code).toBe('not_allowed')
  expect((await undo(full.owner, task)).status).toBe(200)
  await signOff(full.standIn, task)
  expect((await undo(full.standIn, task)).status).toBe(200)
})

test('an open task has nothing to take back', async () => {
  expect((await undo(full.owner, await simple())).problem?.code).toBe('wrong_state')
})

test('a task that is not for a stand-in is left to the others', async () => {
  const task = await simple()
  const key = { roomId_id: { roomId, id: task.id } }
  await world.database.prisma.task.update({ where: key, data: { isForStandIn: false } })
  expect((await signOff(full.standIn, task)).problem?.code).toBe('not_allowed')
  expect((await signOff(full.caretaker, task)).status).toBe(200)
})

test('a missed task still takes what was done, marked as after the fact', async () => {
  const task = await ofRule('rotifer-feed')
  const doneAt = world.clock.now()
  await nextMorning()
  expect((await again(task)).state).toBe('missed')
  const answer = await signOff(full.caretaker, task, { doneAt })
  expect(answer.body).toMatchObject({ state: 'done', signOffs: [{ doneAt, isAfterTheFact: true, isRepeat: false }] })
  expect((await factsOf(task)).map((fact) => fact.at)).toContain(doneAt)
})

test('what was told of a missed task and taken back leaves it missed', async () => {
  const task = await simple()
  await nextMorning()
  await signOff(full.caretaker, task, { doneAt: minutesFrom(world, -1440) })
  expect((await undo(full.caretaker, task)).body).toMatchObject({ state: 'missed', closedByName: null })
})

test('a withdrawn task still takes what was done, marked as after the fact', async () => {
  const task = await counting()
  await world.ok(full.owner, 'recordFact', {
    params: { roomId },
    body: { kind: 'count', subjectId: full.culture.id, data: { of: 'culture', animals: [88], volumeMl: 1 } },
  })
  expect((await again(task)).state).toBe('withdrawn')
  const answer = await signOff(full.standIn, task, { doneAt: minutesFrom(world, -5) })
  expect(answer.body).toMatchObject({ state: 'done', signOffs: [{ isAfterTheFact: true }] })
  expect((await factsOf(task)).length).toBeGreaterThan(0)
})

test('a skipped task still takes what was done, marked as after the fact', async () => {
  const task = await simple()
  await skip(full.owner, task)
  const answer = await signOff(full.standIn, task)
  expect(answer.body).toMatchObject({ state: 'done', reason: null, signOffs: [{ isAfterTheFact: true }] })
})

test('an evening feed that is signed off in the morning is asked about, and goes through once it was meant', async () => {
  const last = (await world.ok(full.owner, 'getRoom', { params: { roomId } })).rounds.at(-1)!
  const task = await taskWhere(({ verb, roundId }) => verb === 'feed' && roundId === last.id)
  const values = plausibleValues(task)
  const confirmed = task.fields.map(({ name }) => name)
  const answer = await signOff(full.standIn, task, { values, confirmed })
  expect(answer.problem).toMatchObject({ code: 'needs_confirmation', fields: [{ path: 'values.early' }] })
  expect(answer.problem?.detail).toContain(`This feed is for ${last.name}`)
  expect((await ofRule(task.ruleId)).state).toBe('open')
  const meant = await signOff(full.standIn, task, { values, confirmed: [...confirmed, earlyFeedName] })
  expect(meant.body.state).toBe('done')
})

test('a phone that was offline replays its whole round, and none trips over the one before', async () => {
  const open = (await list()).filter((task) => task.state === 'open')
  const round = open.slice(0, 10)
  expect(round.length).toBeGreaterThanOrEqual(8)
  const doneAt = (index: number) => minutesFrom(world, -200 + index)
  const kept = round.map((task, index) => ({ task, body: { doneAt: doneAt(index) } }))
  world.clock.advanceMinutes(90)
  for (const { task, body } of kept) {
    const confirmed = [...task.fields.map((field) => field.name), earlyFeedName]
    const answer = await signOff(full.standIn, task, { ...body, confirmed })
    expect([task.ruleId, answer.status, answer.problem?.detail]).toEqual([task.ruleId, 200, undefined])
    expect(answer.body.signOffs.at(-1)).toMatchObject({ doneAt: body.doneAt, shownAmount: task.amount })
  }
})

test('a sign-off that is still to come, or too long ago, is refused', async () => {
  const task = await simple()
  for (const minutes of [3, 60, 1440 * 400, -1440 * 4.1, -1440 * 400]) {
    const answer = await signOff(full.owner, task, { doneAt: minutesFrom(world, minutes) })
    expect([minutes, answer.problem?.code]).toEqual([minutes, 'invalid_input'])
    expect(answer.problem?.fields?.[0]?.path).toBe('doneAt')
  }
  // A phone's clock may run a minute ahead.
  expect((await signOff(full.owner, task, { doneAt: minutesFrom(world, 1) })).status).toBe(200)
})

test('eggs that were found become a clutch; taken back, the clutch is void', async () => {
  await world.ok(full.owner, 'createPair', {
    params: { roomId },
    body: { name: 'Pair 2', species: 'amphiprion-ocellaris', tankId: full.larvalTank.id },
  })
  const task = await taskWhere(
    (each) => each.subject.name === 'Pair 2' && each.fields.some(({ name }) => name === 'eggs'),
  )
  const field = task.fields.find((each) => each.type === 'yes_no')!
  const clutches = () => world.ok(full.owner, 'listClutches', { params: { roomId } })
  const before = await clutches()
  await signOff(full.standIn, task, {
    values: { ...plausibleValues(task), [field.name]: true },
    confirmed: [earlyFeedName],
  })
  const found = (await clutches()).filter((clutch) => !before.some((each) => each.id === clutch.id))
  expect(found).toMatchObject([{ state: 'incubating' }])
  await undo(full.standIn, task)
  expect((await clutches()).find((clutch) => clutch.id === found[0]!.id)?.state ?? 'void').toBe('void')
})

test('a task of tomorrow’s list is for reading: signing it off or skipping it is refused today, and nothing of it is kept', async () => {
  const { tasks } = await world.ok(full.owner, 'getDay', { params: { roomId, date: 'tomorrow' } })
  const task = tasks.find(({ ruleId, state }) => ruleId === 'room-equipment' && state === 'open')!
  const answer = await signOff(full.owner, task)
  expect([answer.status, answer.problem?.code]).toEqual([409, 'too_early'])
  expect(answer.problem?.detail).toContain('on its day')
  expect((await skip(full.owner, task)).problem?.code).toBe('too_early')
  expect((await again(task)).state).toBe('open')
  expect(await factsOf(task)).toEqual([])
  await nextMorning()
  expect((await signOff(full.owner, task)).status).toBe(200)
})
