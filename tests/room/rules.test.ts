import { changeRule, getDay, listRules, previewRule, RoomError } from '@fryward/room'
import type { ChangeRule, Rule, RulePreview, Task } from '@fryward/shared'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { fingerprintOf } from '../api/fingerprint.ts'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

let world: World
let full: FullRoom
let roomId: string
let neighbour: Person

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  roomId = full.roomId
  neighbour = (await openRoom(world, { name: 'Next door' })).owner
})
afterAll(() => world.close())

const as = (person: Person) => ({ ctx: world.contextOf(person), roomId })
const ruleOf = async (ruleId: string): Promise<Rule> => {
  const rule = (await listRules(as(full.viewer))).find((each) => each.id === ruleId)
  if (!rule) throw new Error(`There is no rule ${ruleId}`)
  return rule
}
const preview = (ruleId: string, input: ChangeRule, person = full.caretaker) =>
  previewRule({ ...as(person), ruleId, input })
const change = (ruleId: string, input: ChangeRule, person = full.caretaker) =>
  changeRule({ ...as(person), ruleId, input })
const codeOf = (work: Promise<unknown>) =>
  work.then(
    () => 'accepted',
    (error: unknown) => (error instanceof RoomError ? error.code : String(error)),
  )

type Line = { title: Task['title']; subjectName: string; amount: Task['amount'] }
async function tomorrow(): Promise<Map<string, Line>> {
  const day = await getDay({ ...as(full.viewer), date: 'tomorrow' })
  return new Map(
    day.tasks
      .filter((task) => task.state === 'open')
      .map((task) => [task.key, { title: task.title, subjectName: task.subject.name, amount: task.amount }]),
  )
}
const sorted = (lines: object[]) => lines.map(canonical).sort()
/** As text whatever the order of keys, which the database does not keep. */
const canonical = (value: unknown): string =>
  JSON.stringify(value, (_key, inner: unknown) =>
    inner !== null && typeof inner === 'object' && !Array.isArray(inner)
      ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  )

/** What a preview promised, held against tomorrow's list before and after the change. */
function expectPromiseKept(promised: RulePreview, before: Map<string, Line>, after: Map<string, Line>): void {
  const added = [...after].filter(([key]) => !before.has(key)).map(([, line]) => line)
  const removed = [...before].filter(([key]) => !after.has(key)).map(([, line]) => line)
  const both = [...after].flatMap(([key, line]) => {
    const was = before.get(key)
    return was ? [{ line, was }] : []
  })
  const changed = both.filter(({ line, was }) => canonical(line.amount) !== canonical(was.amount))
  expect(sorted(promised.added)).toEqual(sorted(added))
  expect(sorted(promised.removed)).toEqual(sorted(removed))
  expect(sorted(promised.changed)).toEqual(
    sorted(
      changed.map(({ line, was }) => ({
        title: line.title,
        subjectName: line.subjectName,
        from: was.amount,
        to: line.amount,
      })),
    ),
  )
  expect(promised.unchanged).toBe(both.length - changed.length)
}

describe('a preview', () => {
  test('saves nothing', async () => {
    const before = await fingerprintOf(world, roomId)
    for (const rule of await listRules(as(full.owner)))
      await preview(rule.id, { isOn: !rule.isOn, parameters: {}, version: rule.version })
    expect(await fingerprintOf(world, roomId)).toEqual(before)
  })

  test('of switching a rule off or on is what then happens to tomorrow', async () => {
    let [seen, quiet] = [0, 0]
    for (const rule of await listRules(as(full.owner))) {
      const before = await tomorrow()
      const input = { isOn: !rule.isOn, parameters: {}, version: rule.version }
      const promised = await preview(rule.id, input)
      expect(promised.date).toBe('2026-03-13')
      // Of the many rules that would change nothing here, a few are tried out.
      const isQuiet = promised.added.length + promised.removed.length + promised.changed.length === 0
      if (isQuiet && quiet >= 3) continue
      quiet += Number(isQuiet)
      const changed = await change(rule.id, input)
      expectPromiseKept(promised, before, await tomorrow())
      seen += promised.added.length + promised.removed.length + promised.changed.length
      await change(rule.id, { isOn: rule.isOn, parameters: {}, version: changed.version })
      expect(await tomorrow()).toEqual(before)
    }
    expect(seen).toBeGreaterThan(5)
  })

  test('of each number of a feeding rule is what then happens to tomorrow', async () => {
    const rule = await ruleOf('rotifer-feed')
    const numbers = rule.parameters.filter((parameter) => parameter.type === 'number')
    expect(numbers.length).toBeGreaterThan(0)
    let changes = 0
    for (const { name, minimum, maximum } of numbers)
      for (const value of [minimum!, maximum!]) {
        const before = await tomorrow()
        const { version } = await ruleOf(rule.id)
        const input = { isOn: true, parameters: { [name]: value }, version }
        const promised = await preview(rule.id, input)
        const changed = await change(rule.id, input)
        expectPromiseKept(promised, before, await tomorrow())
        changes += promised.changed.length
        await change(rule.id, { isOn: true, parameters: {}, version: changed.version })
      }
    expect(changes).toBeGreaterThan(0)
  })

  test('is for those who may change rules', async () => {
    const input = { isOn: true, parameters: {}, version: 0 }
    expect(await codeOf(preview('pair-feed', input, full.standIn))).toBe('not_allowed')
    expect(await codeOf(preview('pair-feed', input, neighbour))).toBe('not_found')
  })
})

describe('a change', () => {
  test('is dated, says who, and is in the audit log', async () => {
    const before = await ruleOf('pair-feed')
    const changed = await change('pair-feed', { isOn: true, parameters: {}, version: before.version })
    expect(changed).toMatchObject({
      version: before.version + 1,
      changedByName: full.caretaker.name,
      changedAt: world.clock.now(),
    })
    const { entries } = await world.ok(full.owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })
    expect(entries[0]).toMatchObject({
      action: 'rule.change',
      actor: { userId: full.caretaker.userId },
      detail: { ruleId: 'pair-feed', isOn: true },
    })
  })

  test('from a version that is no longer the newest is refused, also at the same instant', async () => {
    const { version } = await ruleOf('pair-feed')
    const input = { isOn: true, parameters: {}, version }
    const answers = await Promise.all([
      codeOf(change('pair-feed', input, full.owner)),
      codeOf(change('pair-feed', input, full.caretaker)),
    ])
    expect(answers.sort()).toEqual(['accepted', 'stale_version'])
  })

  test('to a number outside its bounds, to a wrong type or to an unknown name is refused', async () => {
    const before = await fingerprintOf(world, roomId)
    const rule = await ruleOf('rotifer-feed')
    const { name, minimum, maximum } = rule.parameters.find((parameter) => parameter.type === 'number')!
    const wrong: ChangeRule['parameters'][] = [
      { [name]: maximum! + 1 },
      { [name]: minimum! - 1 },
      { [name]: 'a lot' },
      { [name]: true },
      { unheardOf: 1 },
    ]
    for (const parameters of wrong)
      for (const way of [preview, change])
        expect(await codeOf(way(rule.id, { isOn: true, parameters, version: rule.version }))).toBe('invalid_input')
    expect(await codeOf(change('no-such-rule', { isOn: true, parameters: {}, version: 0 }))).toBe('not_found')
    expect(await fingerprintOf(world, roomId)).toEqual(before)
  })

  test('that sets what is the default anyway leaves the parameter unchanged', async () => {
    const rule = await ruleOf('rotifer-feed')
    const parameters = Object.fromEntries(rule.parameters.map((parameter) => [parameter.name, parameter.default]))
    await change(rule.id, { isOn: true, parameters, version: rule.version })
    const { prisma } = world.database
    const kept = await prisma.ruleChange.findFirst({ where: { roomId, ruleId: rule.id }, orderBy: { version: 'desc' } })
    expect(kept?.parameters).toEqual({})
  })

  test('that switches a rule off withdraws its open tasks with the reason, and on again brings the same ones back', async () => {
    const rule = await ruleOf('pair-feed')
    const tasks = async () =>
      (await getDay({ ...as(full.owner), date: 'tomorrow' })).tasks.filter((task) => task.ruleId === rule.id)
    const before = await tasks()
    expect(before.length).toBeGreaterThan(0)
    const off = await change(rule.id, { isOn: false, parameters: {}, version: rule.version })
    for (const task of await tasks()) {
      expect(task.state).toBe('withdrawn')
      expect(task.reason).toContain(rule.title)
    }
    await change(rule.id, { isOn: true, parameters: {}, version: off.version })
    expect((await tasks()).map(({ id, state }) => ({ id, state }))).toEqual(
      before.map(({ id }) => ({ id, state: 'open' })),
    )
  })
})
