import type { Device, Fact } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import type { Person } from '../support/world.ts'
import { minutesFrom, tasksOf } from './full-room.ts'
import { full, inOneRoom, make, newestAudit, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()

const params = () => ({ roomId })
const dayBefore = () => minutesFrom(world, -1440).slice(0, 10)
const openTasksOf = async (id: string) =>
  (await tasksOf(world, full.owner, roomId))
    .filter((task) => task.subject.id === id && task.state === 'open')
    .map(({ title, amount }) => ({ title, amount }))
const reopen = (person: Person, id: string, version: number) =>
  world.call(person, 'reopenThing', { params: { roomId, subjectId: id }, body: { version } })
const group = () =>
  world.ok(full.caretaker, 'createJuvenileGroup', {
    params: params(),
    body: {
      ...{ name: make.called('Group'), tankId: full.larvalTank.id, species: 'amphiprion-ocellaris' },
      ...{ settledOn: dayBefore(), number: 40 },
    },
  })

const endings = [
  { word: 'tank', param: 'tankId', made: () => make.tank(), list: 'listTanks', end: 'endTank', more: {} },
  {
    word: 'culture',
    param: 'cultureId',
    made: () => make.culture(),
    list: 'listCultures',
    end: 'endCulture',
    more: { cause: 'crashed' },
  },
  { word: 'pair', param: 'pairId', made: () => make.pair(), list: 'listPairs', end: 'endPair', more: {} },
  {
    word: 'larval_batch',
    param: 'batchId',
    made: () => make.batch({ hatchedOn: dayBefore() }),
    list: 'listLarvalBatches',
    end: 'endLarvalBatch',
    more: {},
  },
  {
    word: 'juvenile_group',
    param: 'groupId',
    made: group,
    list: 'listJuvenileGroups',
    end: 'endJuvenileGroup',
    more: {},
  },
] as const

describe.each(endings)('a $word that was ended by mistake', ({ word, param, made, list, end, more }) => {
  const seen = async (id: string) => {
    const listed = (await world.ok(full.viewer, list, { params: params() })) as { id: string; version: number }[]
    const { version: _version, ...rest } = listed.find((one) => one.id === id)!
    return rest
  }
  async function ended() {
    const thing = await made()
    const before = { seen: await seen(thing.id), tasks: await openTasksOf(thing.id) }
    const body = { reason: 'by mistake', version: thing.version, ...more }
    const answer = await send(world, full.caretaker, end, { params: { roomId, [param]: thing.id }, body })
    expect(answer.status, answer.text).toBe(200)
    return { id: thing.id, name: thing.name, version: thing.version + 1, before }
  }

  test('lives on as if it had not ended, by whoever may manage, and once', async () => {
    const { id, version, before } = await ended()
    for (const person of [full.standIn, full.viewer])
      expect((await reopen(person, id, version)).problem?.code).toBe('not_allowed')
    expect((await reopen(full.caretaker, id, version - 1)).problem?.code).toBe('stale_version')
    const answer = await reopen(full.caretaker, id, version)
    expect(answer.status, answer.problem?.detail).toBe(200)
    expect(answer.body).toMatchObject({ id, kind: word, version: version + 1 })
    expect(await seen(id)).toEqual(before.seen)
    expect(await openTasksOf(id)).toEqual(before.tasks)
    expect(await newestAudit()).toMatchObject({ action: `${word}.reopen`, subjectId: id })
    expect((await reopen(full.caretaker, id, version + 1)).problem?.code).toBe('wrong_state')
  })

  test('stays ended after a day, and while another has its name', async () => {
    const { id, name, version } = await ended()
    const other = await make.tank(name)
    expect((await reopen(full.caretaker, id, version)).problem?.fields?.[0]?.path).toBe('name')
    await send(world, full.caretaker, 'endTank', {
      params: { roomId, tankId: other.id },
      body: { reason: 'its name is wanted', version: other.version },
    })
    world.clock.advanceMinutes(1441)
    expect((await reopen(full.caretaker, id, version)).problem).toMatchObject({
      code: 'too_late_to_undo',
      detail: expect.stringContaining('add it as a new one'),
    })
  })
})

test('what a batch or a culture ate from and fed is linked again, those links too that were still to come', async () => {
  const [fed, first, second] = [await make.batch(), await make.culture(), await make.culture()]
  const link = (cultureId: string, fromOn: string) =>
    world.ok(full.caretaker, 'createFeedLink', { params: params(), body: { batchId: fed.id, cultureId, fromOn } })
  await link(first.id, make.today())
  await link(second.id, minutesFrom(world, 2 * 1440).slice(0, 10))
  const links = async () =>
    (await world.ok(full.viewer, 'listFeedLinks', { params: params() }))
      .filter(({ batchId }) => batchId === fed.id)
      .map(({ version: _version, ...rest }) => rest)
  const before = await links()
  for (const [route, param, thing] of [
    ['endCulture', 'cultureId', first],
    ['endLarvalBatch', 'batchId', fed],
  ] as const) {
    const body = { reason: 'by mistake', version: thing.version }
    await send(world, full.caretaker, route, { params: { roomId, [param]: thing.id }, body })
  }
  expect((await links()).filter(({ untilOn }) => untilOn === null)).toEqual([])
  expect((await reopen(full.caretaker, fed.id, fed.version + 1)).status).toBe(200)
  expect((await links()).filter(({ untilOn }) => untilOn === null).map(({ cultureId }) => cultureId)).toEqual([
    second.id,
  ])
  expect((await reopen(full.caretaker, first.id, first.version + 1)).status).toBe(200)
  expect(new Set(await links())).toEqual(new Set(before))
})

test('what lives in a tank is reopened after its tank', async () => {
  const home = await make.tank()
  const pair = await make.pair(home.id)
  const end = (route: 'endPair' | 'endTank', param: string, thing: { id: string; version: number }) =>
    send(world, full.caretaker, route, {
      params: { roomId, [param]: thing.id },
      body: { reason: 'by mistake', version: thing.version },
    })
  await end('endPair', 'pairId', pair)
  await end('endTank', 'tankId', home)
  const early = await reopen(full.caretaker, pair.id, pair.version + 1)
  expect(early.problem?.detail).toContain(`Reopen ${home.name} first`)
  expect((await reopen(full.caretaker, home.id, home.version + 1)).status).toBe(200)
  expect((await reopen(full.caretaker, pair.id, pair.version + 1)).status).toBe(200)
})

describe('a record that was struck out by mistake', () => {
  const record = (person: Person, body: object) =>
    world.ok(person, 'recordFact', { params: params(), body: body as never })
  const strike = async (person: Person, { id }: { id: string }) => {
    await world.ok(person, 'strikeFact', { params: { roomId, factId: id }, body: { reason: 'by mistake' } })
  }
  const restore = (person: Person, { id }: { id: string }) =>
    world.call(person, 'restoreFact', { params: { roomId, factId: id }, body: {} })
  const factsOf = async (subjectId: string, kind: Fact['kind']) =>
    (await world.ok(full.viewer, 'listFacts', { params: params(), query: { subjectId, kind } })).facts
  const standingOf = async (subjectId: string, kind: Fact['kind']) =>
    (await factsOf(subjectId, kind)).filter(({ struckAt }) => struckAt === null)

  test('is entered again as it was, once, by whom it is of or a caretaker', async () => {
    const subjectId = full.pair.id
    const own = await record(full.standIn, { kind: 'observation', subjectId, data: { note: 'a torn fin' } })
    const other = await record(full.caretaker, { kind: 'observation', subjectId, data: { note: 'eats well' } })
    expect((await restore(full.standIn, own)).problem?.code).toBe('wrong_state')
    await strike(full.standIn, own)
    await strike(full.caretaker, other)
    expect((await restore(full.standIn, other)).problem?.code).toBe('not_allowed')
    expect((await restore(full.viewer, own)).problem?.code).toBe('not_allowed')
    world.clock.advanceMinutes(30)
    const again = await restore(full.standIn, own)
    expect(again.body).toMatchObject({ kind: 'observation', at: own.at, data: own.data, struckAt: null })
    expect(again.body.recordedByName).toBe(own.recordedByName)
    expect((await restore(full.standIn, own)).problem?.detail).toContain('put back already')
    expect((await newestAudit()).action).toBe('fact.restore')
    world.clock.advanceMinutes(1441)
    expect((await restore(full.caretaker, other)).problem?.code).toBe('too_late_to_undo')
  })

  test('makes a lost clutch a lost one again, and fish that were placed are placed again', async () => {
    const laid = await make.clutch()
    const clutch = async () =>
      (await world.ok(full.viewer, 'listClutches', { params: params() })).find(({ id }) => id === laid.id)?.state
    const lost = await record(full.standIn, { kind: 'loss', subjectId: laid.id, data: { of: 'eggs', number: 90 } })
    const whenLost = await clutch()
    await strike(full.standIn, lost)
    expect(await clutch()).not.toBe(whenLost)
    expect((await restore(full.standIn, lost)).status).toBe(201)
    expect(await clutch()).toBe(whenLost)

    const fish = await group()
    world.clock.advanceMinutes(1)
    const left = async () =>
      (await world.ok(full.viewer, 'listJuvenileGroups', { params: params() })).find(({ id }) => id === fish.id)
    const placed = await record(full.caretaker, {
      ...{ kind: 'outcome', subjectId: fish.id },
      data: { outcome: 'placed', number: 30 },
    })
    const after = await left()
    await strike(full.caretaker, placed)
    expect((await restore(full.caretaker, placed)).status).toBe(201)
    expect(await left()).toEqual(after)
    // By now the others died: thirty are no longer there to be placed.
    const [standing] = await standingOf(fish.id, 'outcome')
    await strike(full.caretaker, standing!)
    await record(full.caretaker, { kind: 'loss', subjectId: fish.id, data: { of: 'juveniles', number: 20 } })
    expect((await restore(full.caretaker, standing!)).problem).toMatchObject({
      code: 'wrong_state',
      detail: expect.stringContaining('The book says 20'),
    })
  })

  test('brings a hatch back with the batch that came of it', async () => {
    const laid = await make.clutch()
    world.clock.advanceMinutes(8 * 1440)
    const batch = await make.batch({ clutchIds: [laid.id] })
    await world.ok(full.caretaker, 'createFeedLink', {
      params: params(),
      body: { batchId: batch.id, cultureId: full.culture.id, fromOn: make.today() },
    })
    const [hatch] = await standingOf(laid.id, 'hatch')
    const seen = async () => ({
      clutch: (await world.ok(full.viewer, 'listClutches', { params: params() })).find(({ id }) => id === laid.id)
        ?.state,
      batch: (await world.ok(full.viewer, 'listLarvalBatches', { params: params() })).find(({ id }) => id === batch.id),
      fed: (await world.ok(full.viewer, 'listFeedLinks', { params: params() })).filter(
        ({ batchId, untilOn }) => batchId === batch.id && untilOn === null,
      ).length,
    })
    const before = await seen()
    await strike(full.caretaker, hatch!)
    const without = await seen()
    // Struck out, it never was; nothing lists it.
    expect(without).toMatchObject({ batch: undefined, fed: 0 })
    expect(without.clutch).not.toBe('hatched')
    const byHand = await reopen(full.caretaker, batch.id, batch.version + 1)
    expect(byHand.problem?.detail).toContain('Record the hatch again')
    expect((await restore(full.caretaker, hatch!)).status).toBe(201)
    const { version: _version, ...same } = before.batch!
    expect(await seen()).toMatchObject({ clutch: 'hatched', batch: same, fed: 1 })
  })

  test('of a sign-off that was taken back as a whole comes back with the task alone', async () => {
    const task = (await tasksOf(world, full.owner, roomId)).find(
      ({ state, fields }) => state === 'open' && fields.length === 0,
    )!
    await world.ok(full.caretaker, 'signOffTask', {
      params: { roomId, taskId: task.id },
      body: { doneAt: world.clock.now(), values: {} },
    })
    const facts = await world.ok(full.viewer, 'listFacts', { params: params(), query: { limit: 20 } })
    const written = facts.facts.find(({ taskId }) => taskId === task.id)!
    await world.ok(full.caretaker, 'undoTask', { params: { roomId, taskId: task.id }, body: {} })
    expect((await restore(full.caretaker, written)).problem?.detail).toContain('Sign the task off again')
  })
})

test('a gauge and a device that were taken out by mistake are put back, by whoever may take them out', async () => {
  const { device, token } = await world.ok(full.owner, 'createDevice', { params: params(), body: { name: 'Probe' } })
  const gauge = await world.ok(full.caretaker, 'createGauge', {
    params: { roomId, deviceId: device.id },
    body: { key: 't1', quantity: 'temperature', subjectId: full.larvalTank.id },
  })
  const of = { params: { roomId, gaugeId: gauge.id }, body: {} }
  const post = () =>
    send(world, null, 'postReadings', {
      headers: { authorization: `Bearer ${token}` },
      bytes: { type: 'application/json', data: Buffer.from('[{"gauge":"t1","value":25.4}]') },
    })
  await world.ok(full.caretaker, 'endGauge', of)
  expect((await post()).json).toMatchObject({ kept: 0 })
  expect((await world.call(full.standIn, 'restoreGauge', of)).problem?.code).toBe('not_allowed')
  expect((await world.ok(full.caretaker, 'restoreGauge', of)).endedAt).toBe(null)
  expect((await post()).json).toMatchObject({ kept: 1 })
  expect((await world.call(full.caretaker, 'restoreGauge', of)).problem?.code).toBe('wrong_state')

  const known = { params: { roomId, deviceId: device.id }, body: {} }
  await world.ok(full.owner, 'revokeDevice', known)
  // Another process, or this one, may have let it in within the last second.
  await expect.poll(async () => (await post()).status).toBe(401)
  expect((await world.call(full.caretaker, 'restoreDevice', known)).problem?.code).toBe('not_allowed')
  const again: Device = await world.ok(full.owner, 'restoreDevice', known)
  expect(again.revokedAt).toBe(null)
  await expect.poll(async () => (await post()).json).toMatchObject({ kept: 1 })
  await world.ok(full.owner, 'revokeDevice', known)
  world.clock.advanceMinutes(1441)
  expect((await world.call(full.owner, 'restoreDevice', known)).problem?.code).toBe('too_late_to_undo')
})
