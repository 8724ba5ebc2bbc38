import { renew } from '@fryward/scheduler'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { keptLog, openClockRoom, stateOf, tickNow } from './room-clock.ts'

let world: World
beforeEach(async () => {
  world = await openWorld({ at: '2026-03-10T08:00:00.000Z' })
})
afterEach(() => world.close())

const renewNow = async () => {
  const log = keptLog()
  const written = await renew({ database: world.database, now: world.clock.now, log })
  return { written, warnings: log.warnings }
}

/** As though an earlier version had drawn the lists up: every task says one step of another time. */
const drawnByOldRules = (roomId: string) =>
  world.database.pool.query(
    `UPDATE task SET fingerprint = 'of old rules', content = jsonb_set(content, '{steps}', '[{"text": "As it was.", "quantities": {}}]')
     WHERE room_id = $1`,
    [roomId],
  )

test('lists that the rules of this version drew up are left alone, to the revision', async () => {
  const { roomId } = await openClockRoom(world, {})
  await tickNow(world)
  const before = await stateOf(world, roomId)
  expect(await renewNow()).toEqual({ written: [], warnings: [] })
  expect(await stateOf(world, roomId)).toEqual(before)
})

test('what older rules drew up is brought to what these say, once; what was signed off stays as it was read', async () => {
  const room = await openClockRoom(world, {})
  await tickNow(world)
  const params = { roomId: room.roomId }
  const said = async () => (await room.day('today')).tasks.map(({ id, state, steps }) => ({ id, state, steps }))
  const [first, ...rest] = await said()
  await world.ok(room.owner, 'signOffTask', { params: { ...params, taskId: first!.id }, body: { values: {} } })
  await drawnByOldRules(room.roomId)
  expect((await renewNow()).written).toEqual([room.roomId])
  const after = await said()
  expect(after.find(({ id }) => id === first!.id)).toMatchObject({ state: 'done', steps: [{ text: 'As it was.' }] })
  expect(rest.length).toBeGreaterThan(0)
  for (const task of rest) expect(after).toContainEqual(task)
  const { entries } = await world.ok(room.owner, 'listAudit', { params, query: { limit: 1 } })
  expect(entries[0]).toMatchObject({ action: 'day.renew', detail: { created: 0, withdrawn: 0 } })
  expect(await renewNow()).toEqual({ written: [], warnings: [] })
})

test('one failing room does not hold up the others', async () => {
  const [broken, sound] = [await openClockRoom(world, { name: 'A' }), await openClockRoom(world, { name: 'B' })]
  await tickNow(world)
  for (const { roomId } of [broken, sound]) await drawnByOldRules(roomId)
  await world.database.prisma.room.update({ where: { id: broken.roomId }, data: { rounds: [] } })
  const { written, warnings } = await renewNow()
  expect(written).toEqual([sound.roomId])
  expect(warnings).toMatchObject([{ detail: { roomId: broken.roomId } }])
})
