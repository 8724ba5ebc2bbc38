import { spawnSync } from 'node:child_process'
import { makeRoomForReadings } from '@fryward/room'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { root } from '../support/project-root.ts'
import { openRoom, openWorld, type World } from '../support/world.ts'

let world: World

beforeAll(async () => {
  await ensurePrograms(() => undefined)
  world = await openWorld()
})
afterAll(() => world.close())

/** A program of its own, as a server is one. Its thread is the real one, and dies of a post whose type says so. */
const program = `
  import { pathToFileURL } from 'node:url'
  import { keepLargeInThread } from '@fryward/readings'
  import { postReadings } from '@fryward/room'
  import { openDatabase } from '@fryward/store'
  const { connectionString, device, now } = JSON.parse(process.env.GIVEN)
  const real = pathToFileURL('packages/readings/dist/keeper/keeping-worker.js')
  const mortal = "import '" + real + "'; import { parentPort } from 'node:worker_threads';" +
    "parentPort.on('message', (bundle) => { if (bundle?.some(({ sent }) => sent.type === 'text/deadly')) throw new Error('it was deadly') })"
  const database = openDatabase({ connectionString })
  const ended = []
  const threadOf = (more) => keepLargeInThread({
    ...{ pool: database.pool, connectionString, onEnd: ({ cause }) => ended.push(cause.message) },
    ...more,
  })
  const keeper = threadOf({ program: new URL('data:text/javascript,' + encodeURIComponent(mortal)) })
  const bodyOf = (from, number, gauge = 't1') => JSON.stringify(Array.from({ length: number }, (_, index) => ({
    ...{ gauge, value: 25, at: new Date(Date.parse(now) - (from + index) * 1000).toISOString() },
  })))
  const post = (body, { type = 'application/json', by = keeper } = {}) =>
    postReadings({ ctx: { database, actor: device, now }, keeper: by, type, bytes: Buffer.from(body) })
      .catch(({ code, message }) => ({ code, message }))
  const first = await post(bodyOf(0, 1000))
  const lost = await Promise.all([post(bodyOf(1000, 1000)), post(bodyOf(2000, 1000), { type: 'text/deadly' })])
  const again = await Promise.all([post(bodyOf(1000, 1000)), post(bodyOf(2000, 1000)), post(bodyOf(0, 2))])
  const mixed = await post('[' + bodyOf(3000, 1000).slice(1, -1) + ',' + bodyOf(0, 2, 'other').slice(1, -1) + ']')
  const unreadable = await post('x'.repeat(20_000))
  const nowhere = threadOf({ connectionString: connectionString.replace(/[^/]+$/, 'nowhere') })
  const away = await post(bodyOf(4000, 1000), { by: nowhere })
  const last = post(bodyOf(5000, 1000))
  await new Promise(setImmediate)
  await Promise.all([keeper.close(), nowhere.close()])
  console.log(JSON.stringify({ first, lost, ended, again, mixed, unreadable, away, last: await last }))
  await database.close()
`

test('a thread that dies acknowledges nothing of what it had, the next post gets a new one, and each reading is kept once', async () => {
  const { owner, room } = await openRoom(world)
  await makeRoomForReadings(world.contextOf(owner))
  const { device } = await world.ok(owner, 'createDevice', { params: { roomId: room.id }, body: { name: 'Rack' } })
  await world.ok(owner, 'createGauge', {
    params: { roomId: room.id, deviceId: device.id },
    body: { key: 't1', quantity: 'temperature', subjectId: room.id },
  })
  const { connectionString, pool } = world.database
  const actor = { kind: 'device', roomId: room.id, deviceId: device.id, name: device.name }
  const given = JSON.stringify({ connectionString, device: actor, now: world.clock.now() })
  const run = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
    ...{ cwd: root, encoding: 'utf8', env: { ...process.env, GIVEN: given } },
  })
  expect(run.stderr).toBe('')
  const unknown = { code: 'unavailable', message: expect.stringContaining('nobody knows whether it was') }
  const thousand = { kept: 1000, refusedNumber: 0, refusals: [] }
  expect(JSON.parse(run.stdout)).toMatchObject({
    ...{ first: thousand, lost: [unknown, unknown], ended: ['it was deadly'] },
    again: [thousand, thousand, { kept: 2 }],
    mixed: { kept: 1000, refusedNumber: 2, refusals: [{ index: 1000, reason: 'unknown_gauge' }, { index: 1001 }] },
    unreadable: { code: 'invalid_input', message: 'The body is not JSON.' },
    // PostgreSQL 18 manual, appendix A: invalid_catalog_name.
    away: { code: '3D000' },
    last: thousand,
  })
  const { rows } = await pool.query('SELECT count(*)::int AS number FROM telemetry.reading')
  expect(rows).toEqual([{ number: 5000 }])
})
