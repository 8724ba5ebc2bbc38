import { getDay, getFood, planRoomFood, signOffTask, thinkHere, undoTask } from '@fryward/room'
import type { CureChange, Task } from '@fryward/shared'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openWorld, type Person, type World } from '../support/world.ts'

let world: World
let full: FullRoom
beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
})
afterAll(() => world.close())

const as = (person: Person) => ({ ctx: world.contextOf(person), roomId: full.roomId })
const params = () => ({ roomId: full.roomId })
const today = () => world.clock.now().slice(0, 10)
const food = () => getFood(as(full.viewer))
const planAgain = () => {
  const ctx = { database: world.database, actor: { kind: 'system', job: 'food' } as const, now: world.clock.now() }
  return planRoomFood({ ctx, roomId: full.roomId, thinker: thinkHere })
}
const choose = (change: CureChange, person = full.caretaker) =>
  world.ok(person, 'recordFact', {
    params: params(),
    body: { kind: 'cure', subjectId: full.roomId, data: { change, planMadeAt: world.clock.now() } },
  })
const asked = async (ruleId: string): Promise<Task[]> =>
  (await getDay({ ...as(full.caretaker), date: 'today' })).tasks.filter(
    (task) => task.ruleId === ruleId && task.state === 'open',
  )
const signOff = (task: Task, values: Record<string, unknown>) =>
  signOffTask({ ...as(full.caretaker), taskId: task.id, input: { values, confirmed: ['animals'], again: false } })
const cultures = () => world.ok(full.viewer, 'listCultures', { params: params() })
const standing = async () => (await cultures()).filter(({ endedAt }) => endedAt === null)

test('a culture that is chosen on the plan is asked for, made by the sign-off, and gone again when that is taken back', async () => {
  await planAgain()
  const start = {
    kind: 'start_culture',
    cultureId: full.culture.id,
    volumeL: 10,
    animals: 300_000,
    onDate: today(),
  } as const
  const chosen = await choose(start)
  expect((await food()).underWay).toEqual([{ factId: chosen.id, at: chosen.at, change: start }])
  expect(await planAgain()).toBe('planned')
  expect((await food()).plan!.outlook.cultures.map(({ name }) => name)).toContain('the new culture')
  const [task] = await asked('food-start-culture')
  world.clock.advanceMinutes(10)
  const before = await standing()
  await signOff(task!, {})
  const made = (await standing()).find(({ id }) => !before.some((one) => one.id === id))!
  expect(made).toMatchObject({ kind: 'rotifer', volumeL: 10, parentCultureId: full.culture.id })
  const { facts } = await world.ok(full.viewer, 'listFacts', { params: params(), query: { kind: 'harvest', limit: 1 } })
  expect(facts[0]).toMatchObject({
    subjectId: full.culture.id,
    data: { parts: [{ to: 'culture', subjectId: made.id }] },
  })
  expect((await food()).underWay).toEqual([])
  await undoTask({ ...as(full.caretaker), taskId: task!.id })
  expect((await standing()).map(({ id }) => id)).toEqual(before.map(({ id }) => id))
  expect((await food()).underWay).toHaveLength(1)
})

test('what was chosen is struck out like any record, and its tasks are withdrawn', async () => {
  const [cure] = (await food()).underWay
  await world.ok(full.caretaker, 'strikeFact', {
    params: { ...params(), factId: cure!.factId },
    body: { reason: 'another way' },
  })
  expect((await food()).underWay).toEqual([])
  expect(await asked('food-start-culture')).toEqual([])
})

test('rotifers that are chosen to be bought in are ordered, and are a culture once they have come', async () => {
  await choose({ kind: 'buy_in', animals: 2e6, onDate: today() })
  const before = await standing()
  world.clock.advanceMinutes(5)
  await signOff((await asked('food-buy-in'))[0]!, { animals: 1_500_000, volumeL: 10 })
  const made = (await standing()).find(({ id }) => !before.some((one) => one.id === id))
  expect(made).toMatchObject({ parentCultureId: null, densityNow: { perMl: 150 } })
})

test('what cannot be is refused in a sentence: a culture of fish, more than water holds, a batch that is none', async () => {
  const start = { kind: 'start_culture', volumeL: 10, animals: 1e6, onDate: today() } as const
  await expect(choose({ ...start, cultureId: full.pair.id })).rejects.toThrow('no such culture')
  await expect(choose({ ...start, cultureId: full.culture.id, animals: 1e9 })).rejects.toThrow('hold at most')
  await expect(choose({ kind: 'keep_larvae', subjectId: full.pair.id, larvae: 10 })).rejects.toThrow('no such clutch')
  await expect(choose({ kind: 'use_backups' }, full.viewer)).rejects.toThrow()
})
