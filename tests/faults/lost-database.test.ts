import { addressOf, type RouteId } from '@fryward/shared'
import { findFreePort } from '@fryward/standalone'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { type RawRequest, routeIds, routeOf, send } from '../api/send.ts'
import { validRequest } from '../api/valid-requests/index.ts'
import { forkProgram } from '../support/fork-program.ts'
import { type Cable, layCable } from '../support/stage-cable.ts'
import { openWorld, type World } from '../support/world.ts'

let world: World
let full: FullRoom
let cable: Cable
let requests: { id: RouteId; request: RawRequest }[]
let serial = 0

beforeAll(async () => {
  world = await openWorld({
    reachedBy: async (connectionString) => {
      const url = new URL(connectionString)
      cable = await layCable(Number(url.port))
      url.port = new URL(cable.origin).port
      url.hostname = '127.0.0.1'
      return url.toString()
    },
  })
  full = await openFullRoom(world)
  requests = []
  // A stream is hung up on by itself, a backup whose headers are out can only break off, and whoever leaves the room or gets
  // another session is not let in with the next request.
  const once: RouteId[] = ['downloadBackup', 'leaveRoom', 'confirmSecondFactor', 'endSecondFactor', 'signOut']
  for (const id of routeIds.filter((each) => routeOf(each).kind !== 'stream' && !once.includes(each))) {
    serial += 1
    requests.push({ id, request: await validRequest(id, { world, full, as: full.owner, serial }) })
  }
})
afterAll(async () => {
  cable.plugIn()
  await world.close()
  await cable.close()
})

/** Every route once, each by a browser that this server has not seen in the last seconds: sessions are looked up too. */
const askAll = () =>
  requests.map(async ({ id, request }) => {
    serial += 1
    const person = { ...full.owner, cookie: `${full.owner.cookie}; seen=${serial}` }
    const remoteAddress = `10.8.${Math.floor(serial / 250)}.${(serial % 250) + 1}`
    const { status, text } = await send(world, routeOf(id).permission === 'anyone' ? null : person, id, {
      ...request,
      remoteAddress,
    })
    return { id, status, text }
  })

const isUp = () => expect.poll(async () => (await send(world, null, 'getHealth', {})).status).toBe(200)

test('while the database is away every route but the one that only says that the server answers tells so, and each works again afterwards', async () => {
  cable.pull()
  const answers = await Promise.all(askAll())
  cable.plugIn()
  expect(answers.filter(({ status }) => status !== 503)).toEqual([
    expect.objectContaining({ id: 'getAlive', status: 200 }),
  ])
  await isUp()
})

test('a database that goes away in the middle of things is never an error of ours', async () => {
  for (const afterMs of [0, 2, 5, 10, 20, 40, 80, 160]) {
    const asked = askAll()
    // Not a wait for something: the moment at which the cable is pulled is what is varied.
    await new Promise((resolve) => setTimeout(resolve, afterMs))
    cable.pull()
    const answers = await Promise.all(asked)
    cable.plugIn()
    const ours = answers.filter(({ status }) => status >= 500 && status !== 503)
    expect(ours, `after ${afterMs} ms`).toEqual([])
    await isUp()
  }
})

test('a database that is shut down in the middle of things is never an error of ours', async () => {
  for (const afterMs of [5, 20, 60]) {
    const asked = askAll()
    await new Promise((resolve) => setTimeout(resolve, afterMs))
    await world.database.pool
      .query(`SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database()`)
      .catch(() => undefined) // the one that asks is among them
    const answers = await Promise.all(asked)
    expect(answers.filter(({ status }) => status >= 500 && status !== 503)).toEqual([])
    await isUp()
  }
})

test('a server that starts while the database is away answers that it is, and is ready once the database is back', async () => {
  await ensurePrograms(() => undefined)
  const port = String(await findFreePort())
  cable.pull()
  const settings = { DATABASE_URL: world.database.connectionString, AUTH_SECRET: 'x'.repeat(40), PORT: port }
  const ready = forkProgram('api', settings)
  const statusOf = async (id: 'getAlive' | 'getHealth') =>
    (await fetch(new URL(addressOf(id), `http://127.0.0.1:${port}`))).status
  await vi.waitFor(async () => expect(await statusOf('getAlive')).toBe(200), { timeout: 60_000, interval: 50 })
  expect(await statusOf('getHealth')).toBe(503)
  // Time enough for it to have asked the database.
  await Promise.race([ready, new Promise((resolve) => setTimeout(resolve, 1500))])
  cable.plugIn()
  const server = await ready
  expect(await statusOf('getHealth')).toBe(200)
  await server.kill()
})
