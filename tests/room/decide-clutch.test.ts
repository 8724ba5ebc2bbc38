import { getDay, RoomError, signOffTask } from '@fryward/room'
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
const intentOf = async () =>
  (await world.ok(full.viewer, 'listClutches', { params: { roomId: full.roomId } })).find(
    ({ id }) => id === full.clutch.id,
  )?.intent
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
