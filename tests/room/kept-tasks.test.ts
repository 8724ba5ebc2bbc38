import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { migrationsFolder } from '@fryward/store'
import { sayTitle, sayWithdrawal } from '@fryward/words'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openWorld, type World } from '../support/world.ts'

let world: World
let full: FullRoom

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
})
afterAll(() => world.close())

// Read from the database: what the service has once read of a day it may keep until the room changes.
const keptTasks = () => world.database.prisma.task.findMany({ where: { roomId: full.roomId }, orderBy: { key: 'asc' } })
const voice = { units: 'metric', locale: 'en-GB' } as const

test('a task that was kept when titles were one sentence still says it', async () => {
  const [, , kept] = await keptTasks()
  const sentence = { text: '{amount} concentrate, second feed', quantities: { amount: { value: 2.6, unit: 'mL' } } }
  await world.database.prisma.task.update({
    where: { roomId_id: { roomId: full.roomId, id: kept!.id } },
    data: { content: { ...(kept!.content as object), title: sentence } },
  })
  const task = await world.ok(full.viewer, 'getTask', { params: { roomId: full.roomId, taskId: kept!.id } })
  expect(sayTitle(task.title, voice)).toBe('2.6 mL concentrate, second feed')
})

test('a task that was withdrawn with a whole sentence keeps its reason, without the heading', async () => {
  const [first, second] = await keptTasks()
  const withdraw = (id: string, reason: string) =>
    world.database.prisma.task.update({
      where: { roomId_id: { roomId: full.roomId, id } },
      data: { state: 'withdrawn', reason },
    })
  await withdraw(first!.id, 'No longer needed: the rule "Feed. Well." was changed.')
  await withdraw(second!.id, 'R1 was changed')
  const sql = readFileSync(join(migrationsFolder, '20261129021500_bare_task_reasons/migration.sql'), 'utf8')
  await world.database.prisma.$executeRawUnsafe(sql)
  const reasons = (await keptTasks()).slice(0, 2).map(({ reason }) => reason)
  expect(reasons.map(sayWithdrawal)).toEqual([
    'No longer needed: the rule "Feed. Well." was changed',
    'No longer needed: R1 was changed',
  ])
})

test('what joins the room after its round had begun is not late before it has been there as long as others get', async () => {
  const lateOf = async (name: string) => {
    const { tasks } = await world.ok(full.viewer, 'getDay', { params: { roomId: full.roomId, date: 'today' } })
    return tasks.flatMap(({ subject, dueAt, lateAt }) => (subject.name === name ? [{ dueAt, lateAt }] : []))
  }
  world.clock.set(new Date(Date.parse(world.clock.now()) + 3 * 3_600_000).toISOString())
  const body = { name: 'R-new', kind: 'rotifer', strain: 'L', volumeL: 20, temperatureC: 25, salinity: 22 } as const
  await world.ok(full.owner, 'createCulture', { params: { roomId: full.roomId }, body })
  const joinedAt = Date.parse(world.clock.now())
  const young = (await lateOf('R-new')).filter(({ dueAt }) => Date.parse(dueAt) < joinedAt)
  expect(young.length).toBeGreaterThan(0)
  for (const { lateAt } of young) expect(Date.parse(lateAt)).toBeGreaterThan(joinedAt + 30 * 60_000)
})
