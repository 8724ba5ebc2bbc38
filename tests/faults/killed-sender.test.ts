import { type ChildProcess, fork } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createHandOver, tick } from '@fryward/scheduler'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { keptLog } from '../scheduler/room-clock.ts'
import { openMailServer } from '../support/outside.ts'
import { root } from '../support/project-root.ts'
import { openRoom, openWorld, type World } from '../support/world.ts'

let world: World
let mail: Awaited<ReturnType<typeof openMailServer>>
let child: ChildProcess | undefined
const secret = 'a secret for tests only, long enough for the schema'

beforeAll(async () => {
  await ensurePrograms(() => undefined)
  // The process goes by the machine's own clock.
  world = await openWorld({ at: new Date().toISOString() })
  mail = await openMailServer()
})
afterAll(async () => {
  child?.kill('SIGKILL')
  await mail.close()
  await world.close()
})

test('a scheduler killed between taking a message and its answer leaves it unknown, and the owner is told once more', async () => {
  const { owner, room } = await openRoom(world)
  const params = { roomId: room.id }
  const { device } = await world.ok(owner, 'createDevice', { params, body: { name: 'Rack' } })
  const [tank] = await world.ok(owner, 'listTanks', { params })
  const gauge = await world.ok(owner, 'createGauge', {
    params: { ...params, deviceId: device.id },
    body: { key: 't1', quantity: 'temperature', subjectId: tank!.id, silentAfterMinutes: 9999 },
  })
  await world.database.prisma.alarm.create({
    data: { ...params, id: gauge.id, gaugeId: gauge.id, kind: 'too_high', value: 30, raisedAt: world.clock.now() },
  })

  mail.state.mood = 'hang'
  child = fork(join(root, 'apps/scheduler/packed/main.js'), [], {
    execArgv: [],
    env: {
      ...{ PATH: process.env.PATH, DATABASE_URL: world.database.connectionString, LOG_LEVEL: 'silent' },
      ...{
        AUTH_SECRET: secret,
        PUBLIC_URL: 'https://fish.example.org',
        SMTP_URL: mail.url,
        MAIL_FROM: 'f@example.org',
      },
    },
  })
  const killed = once(child, 'exit')
  await vi.waitFor(() => expect(mail.letters).toHaveLength(1), { timeout: 60_000, interval: 50 })
  child.kill('SIGKILL')
  await killed
  const states = async () =>
    (await world.ok(owner, 'listMessages', { params })).map(({ ordinal, state }) => [ordinal, state])
  expect(await states()).toEqual([[0, 'claimed']])

  mail.state.mood = 'take'
  world.clock.set(new Date().toISOString())
  world.clock.advanceMinutes(4)
  const mailSettings = { smtpUrl: mail.url, from: 'f@example.org' }
  const handOver = createHandOver({ secret, publicUrl: 'https://fish.example.org', mail: mailSettings })
  const look = () =>
    tick({
      ...{ database: world.database, now: world.clock.now, log: keptLog(), sending: { handOver, isMailSetUp: true } },
    })
  await look()
  await look()
  expect(await states()).toEqual([
    [1, 'sent'],
    [0, 'unknown'],
  ])
  expect(mail.letters).toHaveLength(2)
})
