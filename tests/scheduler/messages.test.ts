import { sendingSecretOf } from '@fryward/notify'
import { tellAlarms } from '@fryward/room'
import { createHandOver, sweep, tick } from '@fryward/scheduler'
import type { Message } from '@fryward/shared'
import { Webhook } from 'standardwebhooks'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openMailServer, openPushService, openWebhookServer } from '../support/outside.ts'
import { openWorld, type World } from '../support/world.ts'
import { keptLog } from './room-clock.ts'

let world: World
let full: FullRoom
let mail: Awaited<ReturnType<typeof openMailServer>>
let push: Awaited<ReturnType<typeof openPushService>>
let hook: Awaited<ReturnType<typeof openWebhookServer>>
let hookSecret: string
let sending: { handOver: ReturnType<typeof createHandOver>; isMailSetUp: boolean }
let serial = 0
const inRoom = () => ({ roomId: full.roomId })

beforeAll(async () => {
  world = await openWorld({ isMailSetUp: false })
  full = await openFullRoom(world)
  mail = await openMailServer()
  push = await openPushService()
  hook = await openWebhookServer()
  const { secret } = await world.ok(full.owner, 'changeWebhook', { params: inRoom(), body: { url: hook.url } })
  hookSecret = secret ?? ''
  sending = { handOver: handOverWith(mail.url), isMailSetUp: true }
})
afterAll(async () => {
  await Promise.all([mail.close(), push.close(), hook.close()])
  await world.close()
})

const handOverWith = (smtpUrl: string) =>
  createHandOver({
    ...{
      secret: sendingSecretOf('a secret for tests only, long enough for the schema'),
      publicUrl: 'https://fish.example.org',
    },
    ...{ mail: { smtpUrl, from: 'fryward@example.org' }, mayReachThisMachine: true, trust: push.trust },
  })

const takeDuty = (userId: string) =>
  world.ok(full.owner, 'takeDuty', { params: { ...inRoom(), date: world.clock.now().slice(0, 10) }, body: { userId } })

beforeEach(async () => {
  // Each test begins with nothing standing and nothing on its way, two hours after the one before.
  const { prisma } = world.database
  await prisma.message.deleteMany({})
  await prisma.alarm.updateMany({ where: { clearedAt: null }, data: { clearedAt: world.clock.now() } })
  world.clock.advanceMinutes(120)
  await takeDuty(full.standIn.userId)
  for (const list of [mail.letters, push.pushed, hook.posted]) list.length = 0
  mail.state.mood = 'take'
  push.state.status = 201
  hook.state.status = 204
  sending.handOver = handOverWith(mail.url)
})

const look = async (log = keptLog()) => {
  await tick({ database: world.database, now: world.clock.now, log, sending })
  return log
}

/** A gauge that is too warm from now on. */
async function warm(): Promise<string> {
  serial += 1
  const { device } = await world.ok(full.owner, 'createDevice', { params: inRoom(), body: { name: `Rack ${serial}` } })
  const gauge = await world.ok(full.owner, 'createGauge', {
    params: { ...inRoom(), deviceId: device.id },
    body: {
      key: 't1',
      quantity: 'temperature',
      subjectId: full.larvalTank.id,
      low: 24,
      high: 28,
      silentAfterMinutes: 9999,
    },
  })
  const alarm = { roomId: full.roomId, id: gauge.id, gaugeId: gauge.id, kind: 'too_high' as const, value: 29.4 }
  await world.database.prisma.alarm.create({ data: { ...alarm, raisedAt: world.clock.now() } })
  return alarm.id
}
const messagesOf = async (alarmId: string): Promise<Message[]> =>
  (await world.ok(full.viewer, 'listMessages', { params: inRoom() }))
    .filter((message) => message.alarmId === alarmId)
    .toReversed()
const told = async (alarmId: string) =>
  (await messagesOf(alarmId)).map(({ ordinal, way, personName, state }) => [ordinal, way, personName, state])

const standIn = 'Stand-in Sam'

describe('an alarm', () => {
  test('goes to whoever has the room by push, mail and signed webhook, in words, and once however many look', async () => {
    await world.ok(full.standIn, 'addPhone', { params: inRoom(), body: push.phone })
    const alarmId = await warm()
    await Promise.all([look(), look()])
    expect((await told(alarmId)).sort()).toEqual([
      [0, 'mail', standIn, 'sent'],
      [0, 'push', standIn, 'sent'],
      [0, 'webhook', null, 'sent'],
    ])
    const [letter, ...more] = mail.letters
    expect(more).toEqual([])
    expect(letter?.to).toEqual([full.standIn.email])
    expect(letter?.text).toContain('Temperature in Larval tank is too high: 29.4 °C')
    expect(letter?.text).toContain('unplug the heater')
    expect(letter?.text).toContain(`https://fish.example.org/rooms/${full.roomId}`)
    expect(push.pushed.map(({ text }) => JSON.parse(text))).toEqual([
      {
        title: 'Back room: Temperature in Larval tank is too high: 29.4 °C, and should be at most 28 °C',
        body: expect.stringMatching(/^First: /),
        url: `https://fish.example.org/rooms/${full.roomId}`,
      },
    ])
    expect(push.pushed[0]?.headers.authorization).toMatch(/^vapid t=/)
    const [posted] = hook.posted
    // Its time is the room's, which stands in the past: what is held here is the signature itself.
    const at = new Date(Number(posted?.headers['webhook-timestamp']) * 1000)
    const signature = new Webhook(hookSecret).sign(String(posted?.headers['webhook-id']), at, posted?.body ?? '')
    expect(posted?.headers['webhook-signature']).toBe(signature)
    expect(JSON.parse(posted?.body ?? '')).toMatchObject({ type: 'alarm.raised', data: { alarm: { id: alarmId } } })
    await world.database.prisma.pushPhone.deleteMany({})
  })

  test('is said again every ten minutes, after twenty to the owners too, and to all of them when it is over', async () => {
    const alarmId = await warm()
    for (const minutes of [0, 9, 1, 10]) {
      world.clock.advanceMinutes(minutes)
      await look()
    }
    const people = (letters: typeof mail.letters) => letters.map(({ to }) => to[0]).sort()
    expect(people(mail.letters)).toEqual([...Array(3).fill(full.standIn.email), full.owner.email].sort())
    expect(mail.letters.at(-1)?.text).toContain('Nobody has it yet.')
    mail.letters.length = 0
    await world.database.prisma.alarm.updateMany({ where: { id: alarmId }, data: { clearedAt: world.clock.now() } })
    await look()
    await look()
    expect(people(mail.letters)).toEqual([full.standIn.email, full.owner.email].sort())
    expect(mail.letters[0]?.text).toContain('It is over')
  })

  test('is said no more once somebody has it, and not while it is to be quiet', async () => {
    const alarmId = await warm()
    const params = { ...inRoom(), alarmId }
    await look()
    await world.ok(full.standIn, 'quietAlarm', { params, body: { minutes: 30 } })
    world.clock.advanceMinutes(29)
    await look()
    expect(mail.letters).toHaveLength(1)
    world.clock.advanceMinutes(1)
    await look()
    expect(mail.letters.length).toBeGreaterThan(1)
    await world.ok(full.standIn, 'acknowledgeAlarm', { params, body: {} })
    const before = mail.letters.length
    world.clock.advanceMinutes(60)
    await look()
    expect(mail.letters).toHaveLength(before)
  })

  test('that is handed over goes to that person at once, and a viewer is not handed one', async () => {
    const alarmId = await warm()
    const params = { ...inRoom(), alarmId }
    await look()
    world.clock.advanceMinutes(1)
    const refused = await world.call(full.standIn, 'handAlarm', { params, body: { userId: full.viewer.userId } })
    expect(refused.problem?.code).toBe('wrong_state')
    await world.ok(full.standIn, 'handAlarm', { params, body: { userId: full.caretaker.userId } })
    await look()
    await look()
    expect(mail.letters.map(({ to }) => to[0])).toEqual([full.standIn.email, full.caretaker.email])
  })

  test('goes to the owners at once where nobody has the room', async () => {
    await world.ok(full.owner, 'takeDuty', {
      params: { ...inRoom(), date: world.clock.now().slice(0, 10) },
      body: { userId: null },
    })
    await warm()
    await look()
    expect(mail.letters.map(({ to }) => to[0])).toEqual([full.owner.email])
  })
})

describe('a message', () => {
  test('that is refused is written down as not sent, and the owners hear two minutes later', async () => {
    const alarmId = await warm()
    mail.state.mood = 'refuse'
    await look()
    const [refused] = await messagesOf(alarmId)
    expect(refused).toMatchObject({ state: 'failed', detail: expect.stringContaining('no such box') })
    mail.state.mood = 'take'
    world.clock.advanceMinutes(2)
    await look()
    expect(mail.letters.map(({ to }) => to[0]).sort()).toEqual([full.owner.email, full.standIn.email].sort())
  })

  test('whose line is cut on it is unknown, and is not sent again by itself', async () => {
    const alarmId = await warm()
    mail.state.mood = 'drop'
    await look()
    expect(await told(alarmId)).toContainEqual([0, 'mail', standIn, 'unknown'])
    mail.state.mood = 'take'
    world.clock.advanceMinutes(1)
    await look()
    expect(mail.letters).toHaveLength(1)
  })

  test('waits where the other side is not there, and goes when it is back', async () => {
    const alarmId = await warm()
    sending.handOver = handOverWith('smtp://127.0.0.1:9')
    await look()
    expect(await told(alarmId)).toContainEqual([0, 'mail', standIn, 'waiting'])
    sending.handOver = handOverWith(mail.url)
    world.clock.advanceMinutes(1)
    await look()
    expect(await told(alarmId)).toContainEqual([0, 'mail', standIn, 'sent'])
    expect(mail.letters).toHaveLength(1)
  })

  test('to a browser that has ended it takes the phone off', async () => {
    await world.ok(full.standIn, 'addPhone', { params: inRoom(), body: push.phone })
    push.state.status = 410
    const alarmId = await warm()
    await look()
    expect(await told(alarmId)).toContainEqual([0, 'push', standIn, 'failed'])
    expect((await world.ok(full.standIn, 'getReach', { params: inRoom() })).phones).toEqual([])
  })

  test('of a webhook that is this machine itself is refused unless the settings allow it', async () => {
    const alarmId = await warm()
    sending.handOver = createHandOver({ secret: 'x'.repeat(32), publicUrl: 'https://fish.example.org' })
    await look()
    const webhook = (await messagesOf(alarmId)).find(({ way }) => way === 'webhook')
    expect(webhook?.detail).toContain('127.0.0.1 is this machine itself')
    expect(hook.posted).toEqual([])
  })

  test('never goes to whoever has left the room before it went out', async () => {
    const alarmId = await warm()
    await tellAlarms(world.contextOf(full.owner), { isMailSetUp: true })
    const where = { roomId_userId: { ...inRoom(), userId: full.standIn.userId } }
    const membership = await world.database.prisma.membership.findUniqueOrThrow({ where })
    await world.ok(full.standIn, 'leaveRoom', { params: inRoom() })
    await look()
    expect(await told(alarmId)).toContainEqual([0, 'mail', standIn, 'withdrawn'])
    expect(mail.letters).toEqual([])
    await world.database.prisma.membership.create({ data: membership })
  })

  test('is withdrawn where somebody has taken the alarm before it went out', async () => {
    const alarmId = await warm()
    await tellAlarms(world.contextOf(full.owner), { isMailSetUp: true })
    await world.ok(full.standIn, 'acknowledgeAlarm', { params: { ...inRoom(), alarmId }, body: {} })
    await look()
    expect((await messagesOf(alarmId)).map(({ state }) => state)).toEqual(['withdrawn', 'withdrawn'])
    expect(mail.letters).toEqual([])
  })

  test('to try goes to whoever asked, and says that nothing is wrong', async () => {
    const nothing = await world.call(full.caretaker, 'sendTrial', { params: inRoom(), body: {} })
    expect(nothing.problem?.code).toBe('wrong_state')
    await world.ok(full.caretaker, 'addPhone', { params: inRoom(), body: push.phone })
    const written = await world.ok(full.caretaker, 'sendTrial', { params: inRoom(), body: {} })
    expect(written).toMatchObject([{ occasion: 'trial', state: 'waiting', to: 'Phone by the bed' }])
    await look()
    expect(push.pushed.map(({ text }) => text)).toEqual([expect.stringContaining('a message to try')])
  })

  test('can be looked up for 90 days, and longer while its alarm stands', async () => {
    const { prisma } = world.database
    const over = await warm()
    await look()
    await prisma.alarm.update({
      where: { roomId_id: { ...inRoom(), id: over } },
      data: { clearedAt: world.clock.now() },
    })
    const standing = await warm()
    await look()
    const sweptAfter = async (days: number) => {
      const now = () => new Date(Date.parse(world.clock.now()) + days * 86_400_000).toISOString()
      await sweep({ database: world.database, now, log: keptLog() })
      return new Set((await prisma.message.findMany()).map(({ alarmId }) => alarmId))
    }
    expect(await sweptAfter(89)).toEqual(new Set([over, standing]))
    expect(await sweptAfter(91)).toEqual(new Set([standing]))
  })
})
