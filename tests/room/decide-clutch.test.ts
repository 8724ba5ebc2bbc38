import { getDay, RoomError, signOffTask, undoTask } from '@fryward/room'
import type { Clutch } from '@fryward/shared'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openWorld, type Person, type World } from '../support/world.ts'

let world: World
let full: FullRoom

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  // Spawned on the evening of the 11th: its night is about a week later.
  world.clock.set('2026-03-16T08:00:00.000Z')
  await world.ok(full.owner, 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'observation', subjectId: full.roomId, data: { note: 'The new day begins.' } },
  })
})
afterAll(() => world.close())

const as = (person: Person) => ({ ctx: world.contextOf(person), roomId: full.roomId })
const asked = async () => (await getDay({ ...as(full.caretaker), date: 'today' })).tasks.find(isDecision)
const isDecision = (task: { ruleId: string; subject: { id: string } }) =>
  task.ruleId === 'clutch-decide' && task.subject.id === full.clutch.id
const intentOf = async () => (await clutchNow()).intent
const clutchNow = async () =>
  (await world.ok(full.viewer, 'listClutches', { params: { roomId: full.roomId } })).find(
    ({ id }) => id === full.clutch.id,
  )!
const withoutVersion = ({ version: _version, ageDays: _age, ...clutch }: Clutch) => clutch
const decide = (person: Person, taskId: string) =>
  signOffTask({
    ...as(person),
    taskId,
    input: { values: { intent: 'leave_with_parents' }, confirmed: [], again: false },
  })

test('a clutch is decided on by signing its question off, which a stand-in may not', async () => {
  expect(await intentOf()).toBe('undecided')
  const task = await asked()
  expect(task?.state).toBe('open')
  const refused = await decide(full.standIn, task!.id).catch((error: unknown) => error)
  expect(refused).toBeInstanceOf(RoomError)
  expect(await intentOf()).toBe('undecided')
  await decide(full.caretaker, task!.id)
  expect(await intentOf()).toBe('leave_with_parents')
  const { entries } = await world.ok(full.owner, 'listAudit', { params: { roomId: full.roomId }, query: { limit: 10 } })
  const ofClutch = entries.filter(({ action }) => action === 'clutch.change')
  expect(ofClutch.map(({ detail }) => detail)).toEqual([{ intent: 'leave_with_parents' }])
  expect((await asked())?.state).toBe('done')
})

test('taken back, the sign-off leaves the clutch as it was meant before, and whoever saw it decided looks again', async () => {
  const { version } = await clutchNow()
  const task = await asked()
  await undoTask({ ...as(full.caretaker), taskId: task!.id })
  expect(await intentOf()).toBe('undecided')
  expect((await asked())?.state).toBe('open')
  const stale = await world.call(full.owner, 'changeClutch', {
    params: { roomId: full.roomId, clutchId: full.clutch.id },
    body: { intent: 'raise_all', version },
  })
  expect(stale.problem).toMatchObject({ code: 'stale_version', current: { intent: 'undecided' } })
})

test('a decision that is struck out gives back the one before it, however it came about', async () => {
  const change = async (intent: 'raise_all' | 'raise_part') => {
    world.clock.advanceMinutes(1)
    const { version } = await clutchNow()
    await world.ok(full.owner, 'changeClutch', {
      params: { roomId: full.roomId, clutchId: full.clutch.id },
      body: { intent, version },
    })
  }
  await change('raise_all')
  const before = await clutchNow()
  await change('raise_part')
  const { facts } = await world.ok(full.viewer, 'listFacts', {
    params: { roomId: full.roomId },
    query: { subjectId: full.clutch.id, kind: 'decision' },
  })
  expect(facts[0]).toMatchObject({ data: { intent: 'raise_part' }, recordedByName: full.owner.name })
  await world.ok(full.owner, 'strikeFact', {
    params: { roomId: full.roomId, factId: facts[0]!.id },
    body: { reason: 'the other clutch was meant' },
  })
  const { version, ageDays: _age, ...after } = await clutchNow()
  expect(after).toEqual(withoutVersion(before))
  expect(version).toBe(before.version + 2)
})

test('a decision is not posted as a fact by itself', async () => {
  const answer = await world.call(full.owner, 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'decision', subjectId: full.clutch.id, data: { intent: 'raise_all' } } as never,
  })
  expect(answer.problem?.code).toBe('invalid_input')
})
