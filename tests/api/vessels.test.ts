import type { RouteId } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { type FullRoom, minutesFrom, openFullRoom, tasksOf } from './full-room.ts'
import { send } from './send.ts'

let world: World
let full: FullRoom
let roomId: string
let neighbour: { owner: Person; roomId: string }
let serial = 0

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  roomId = full.roomId
  const opened = await openRoom(world, { name: 'Next door' })
  neighbour = { owner: opened.owner, roomId: opened.room.id }
})
afterAll(() => world.close())
beforeEach(() => world.clock.advanceMinutes(1))

const called = (what: string) => {
  serial += 1
  return `${what} ${serial}`
}
const params = () => ({ roomId })
const newest = async () =>
  (await world.ok(full.owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })).entries[0]!
const today = () => world.clock.now().slice(0, 10)

const tank = (name = called('Tank')) =>
  world.ok(full.caretaker, 'createTank', {
    params: params(),
    body: { name, kind: 'grow_out', volumeL: 60, temperatureC: 26, salinity: 33 },
  })
const culture = (more: object = {}) =>
  world.ok(full.caretaker, 'createCulture', {
    params: params(),
    body: { name: called('R'), kind: 'rotifer', strain: 'S', volumeL: 16, temperatureC: 25, salinity: 20, ...more },
  })
const pair = (tankId = full.pairTank.id) =>
  world.ok(full.caretaker, 'createPair', {
    params: params(),
    body: { name: called('Pair'), species: 'amphiprion-ocellaris', tankId },
  })
const batch = (tankId = full.larvalTank.id) =>
  world.ok(full.standIn, 'createLarvalBatch', {
    params: params(),
    body: { name: called('Batch'), tankId, species: 'amphiprion-ocellaris', hatchedOn: today(), larvae: 50 },
  })
const clutch = () =>
  world.ok(full.standIn, 'createClutch', {
    params: params(),
    body: { pairId: full.pair.id, name: called('Clutch'), spawnedAt: minutesFrom(world, -5), eggs: 90 },
  })
const concentrate = () =>
  world.ok(full.caretaker, 'createConcentrate', {
    params: params(),
    body: { name: called('Bottle'), cellsPerMl: 5e10 },
  })
const feedLink = async () => {
  const fed = await batch()
  return world.ok(full.caretaker, 'createFeedLink', {
    params: params(),
    body: { batchId: fed.id, cultureId: full.culture.id, fromOn: today() },
  })
}

/** How each thing is made, changed and ended; what a change sets and the word its audit rows begin with. */
const things = [
  { word: 'tank', param: 'tankId', make: () => tank(), list: 'listTanks', change: 'changeTank', set: { volumeL: 61 } },
  {
    word: 'culture',
    param: 'cultureId',
    make: culture,
    list: 'listCultures',
    change: 'changeCulture',
    set: { volumeL: 17 },
  },
  {
    word: 'pair',
    param: 'pairId',
    make: () => pair(),
    list: 'listPairs',
    change: 'changePair',
    set: { isResting: true },
  },
  {
    word: 'clutch',
    param: 'clutchId',
    make: clutch,
    list: 'listClutches',
    change: 'changeClutch',
    set: { intent: 'raise_part' },
  },
  {
    ...{ word: 'larval_batch', param: 'batchId', make: () => batch(), list: 'listLarvalBatches' },
    ...{ change: 'changeLarvalBatch', set: { note: 'a little pale' } },
  },
  {
    ...{ word: 'concentrate', param: 'concentrateId', make: concentrate, list: 'listConcentrates' },
    ...{ change: 'changeConcentrate', set: { isFinished: true } },
  },
  { word: 'feed_link', param: 'feedLinkId', make: feedLink, list: 'listFeedLinks', change: 'endFeedLink', set: {} },
] as const satisfies { list: RouteId; change: RouteId; [key: string]: unknown }[]
const setOf = (thing: (typeof things)[number]) => (thing.word === 'feed_link' ? { untilOn: today() } : thing.set)

describe.each(things)('a $word', (thing) => {
  test('is made, listed and written into the audit log', async () => {
    const made = await thing.make()
    expect(await newest()).toMatchObject({ action: `${thing.word}.create` })
    const listed: unknown = await world.ok(full.viewer, thing.list, { params: params() })
    expect(listed).toContainEqual(made)
  })

  test('is changed from the version that was seen, and says who changed it', async () => {
    const made = await thing.make()
    const request = { params: { roomId, [thing.param]: made.id }, body: { ...setOf(thing), version: made.version } }
    const answer = await send(world, full.caretaker, thing.change, request)
    expect(answer.status, answer.text).toBe(200)
    expect(answer.json).toMatchObject({ ...setOf(thing), id: made.id, version: made.version + 1 })
    expect(await newest()).toMatchObject({ actor: { userId: full.caretaker.userId } })
    expect((await newest()).action).toMatch(new RegExp(`^${thing.word}\\.(change|end)$`))
  })

  test('that somebody changed meanwhile is not overwritten: 409 says what it is now', async () => {
    const made = await thing.make()
    const request = { params: { roomId, [thing.param]: made.id }, body: { ...setOf(thing), version: made.version } }
    await send(world, full.caretaker, thing.change, request)
    const before = await fingerprintOf(world, roomId)
    const answer = await send(world, full.owner, thing.change, request)
    expect([answer.status, answer.problem?.code]).toEqual([409, 'stale_version'])
    expect(answer.problem?.current).toMatchObject({ id: made.id, version: made.version + 1, ...setOf(thing) })
    expect(await fingerprintOf(world, roomId)).toEqual(before)
  })

  test('that two people change at the same instant takes one of the changes', async () => {
    const made = await thing.make()
    const request = { params: { roomId, [thing.param]: made.id }, body: { ...setOf(thing), version: made.version } }
    const answers = await Promise.all(
      [full.owner, full.caretaker].map((person) => send(world, person, thing.change, request)),
    )
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409])
  })

  test('is not found from another room', async () => {
    const made = await thing.make()
    const answer = await send(world, neighbour.owner, thing.change, {
      params: { roomId: neighbour.roomId, [thing.param]: made.id },
      body: { ...setOf(thing), version: made.version },
    })
    expect(answer.problem?.code).toBe('not_found')
  })
})

const ends = [
  { word: 'tank', param: 'tankId', make: () => tank(), end: 'endTank' },
  { word: 'culture', param: 'cultureId', make: culture, end: 'endCulture' },
  { word: 'pair', param: 'pairId', make: () => pair(), end: 'endPair' },
  { word: 'larval_batch', param: 'batchId', make: () => batch(), end: 'endLarvalBatch' },
] as const
describe.each(ends)('a $word that is ended', ({ word, param, make, end }) => {
  test('says why, stays readable, has no open task left, and is ended once', async () => {
    const made = await make()
    const body = { reason: 'no longer needed', version: made.version }
    const request = { params: { roomId, [param]: made.id }, body }
    expect((await send(world, full.standIn, end, request)).problem?.code).toBe('not_allowed')
    expect((await send(world, full.caretaker, end, { ...request, body: { ...body, reason: '' } })).problem?.code).toBe(
      'invalid_input',
    )
    const answer = await send(world, full.caretaker, end, request)
    expect(answer.json).toMatchObject({ id: made.id, endedAt: world.clock.now(), version: made.version + 1 })
    expect(await newest()).toMatchObject({
      action: `${word}.end`,
      subjectId: made.id,
      detail: { reason: 'no longer needed' },
    })
    const open = (await tasksOf(world, full.owner, roomId)).filter(
      (task) => task.subject.id === made.id && task.state === 'open',
    )
    expect(open).toEqual([])
    const twice = await send(world, full.caretaker, end, { ...request, body: { ...body, version: made.version + 1 } })
    expect(twice.problem?.code).toBe('wrong_state')
  })

  test('gives its name free', async () => {
    const made = await make()
    const request = { params: { roomId, [param]: made.id }, body: { reason: 'sold it', version: made.version } }
    await send(world, full.caretaker, end, request)
    expect((await tank(made.name)).name).toBe(made.name)
  })
})

describe('names', () => {
  test.each(['Pair tank', 'pair TANK', '  Pair tank  ', 'R1', 'Pair 1'])('"%s" is taken already', async (name) => {
    const answer = await world.call(full.owner, 'createTank', {
      params: params(),
      body: { name, kind: 'storage', volumeL: 10, temperatureC: 25, salinity: 33 },
    })
    expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'name' }] })
  })

  test('a thing may be renamed to its own name in other letters, and not to that of another', async () => {
    const made = await tank()
    const rename = (name: string, version: number) =>
      world.call(full.owner, 'changeTank', { params: { roomId, tankId: made.id }, body: { name, version } })
    const loud = await rename(made.name.toUpperCase(), made.version)
    expect(loud.body.name).toBe(made.name.toUpperCase())
    expect((await rename('R1', loud.body.version)).problem?.fields).toMatchObject([{ path: 'name' }])
  })

  test('two that are made with one name at the same instant are one', async () => {
    const name = called('Race')
    const body = { name, kind: 'storage' as const, volumeL: 10, temperatureC: 25, salinity: 33 }
    const answers = await Promise.all(
      [full.owner, full.caretaker].map((person) => world.call(person, 'createTank', { params: params(), body })),
    )
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 400])
  })

  test('a clutch and a batch without a name get one that fits, a second of the day another', async () => {
    const long = await world.ok(full.owner, 'createPair', {
      params: params(),
      body: { name: `${'Long '.repeat(15)}🐟${serial}`, species: 'amphiprion-ocellaris', tankId: full.pairTank.id },
    })
    const lay = () =>
      world.ok(full.owner, 'createClutch', {
        params: params(),
        body: { pairId: long.id, spawnedAt: minutesFrom(world, -60) },
      })
    const names = [(await lay()).name, (await lay()).name, (await lay()).name]
    expect(new Set(names).size).toBe(3)
    for (const name of names) {
      expect(name.length).toBeLessThanOrEqual(80)
      expect(name).toMatch(/^Long .*, 1\d Mar( [a-z])?$/)
      expect(name.isWellFormed()).toBe(true)
    }
  })
})

describe('what belongs together', () => {
  test('a rotifer culture says its strain, at first and ever after', async () => {
    const body = { name: called('R'), kind: 'rotifer' as const, volumeL: 16, temperatureC: 25, salinity: 20 }
    const without = await world.call(full.owner, 'createCulture', { params: params(), body })
    expect(without.problem?.fields).toMatchObject([{ path: 'strain' }])
    const made = await culture()
    const taken = await world.call(full.owner, 'changeCulture', {
      params: { roomId, cultureId: made.id },
      body: { strain: null, version: made.version },
    })
    expect(taken.problem?.fields).toMatchObject([{ path: 'strain' }])
    const algae = await world.ok(full.owner, 'createCulture', {
      params: params(),
      body: { ...body, kind: 'microalgae' },
    })
    expect(algae.strain).toBeNull()
  })

  test('a culture that starts tomorrow is not started yet', async () => {
    const answer = await world.call(full.owner, 'createCulture', {
      params: params(),
      body: {
        ...{ name: called('R'), kind: 'rotifer', strain: 'L', volumeL: 16, temperatureC: 25, salinity: 20 },
        startedAt: minutesFrom(world, 1440),
      },
    })
    expect(answer.problem?.fields).toMatchObject([{ path: 'startedAt' }])
  })

  test('a culture from a parent says where its animals came from', async () => {
    const made = await culture({ parentCultureId: full.culture.id, startDensityPerMl: 70 })
    const { facts } = await world.ok(full.owner, 'listFacts', { params: params(), query: { subjectId: made.id } })
    expect(facts).toMatchObject([{ kind: 'inoculation', data: { densityPerMl: 70, fromCultureId: full.culture.id } }])
  })

  test('a tank that fish live in is not taken out of use', async () => {
    const home = await tank()
    const inside = await pair(home.id)
    const end = (version: number) =>
      world.call(full.owner, 'endTank', { params: { roomId, tankId: home.id }, body: { reason: 'leaks', version } })
    const refused = await end(home.version)
    expect(refused.problem).toMatchObject({ code: 'wrong_state' })
    expect(refused.problem?.detail).toContain(inside.name)
    await world.ok(full.owner, 'changePair', {
      params: { roomId, pairId: inside.id },
      body: { tankId: full.pairTank.id, version: inside.version },
    })
    expect((await end(home.version)).status).toBe(200)
  })

  test('a tank that larvae live in is not taken out of use', async () => {
    const home = await tank()
    await batch(home.id)
    const answer = await world.call(full.owner, 'endTank', {
      params: { roomId, tankId: home.id },
      body: { reason: 'leaks', version: home.version },
    })
    expect(answer.problem?.code).toBe('wrong_state')
  })

  test('nothing lives in water colder than ten degrees, whichever way it would come to that', async () => {
    const cold = await world.ok(full.owner, 'createTank', {
      params: params(),
      body: { name: called('Cellar'), kind: 'storage', volumeL: 200, temperatureC: 8, salinity: 33 },
    })
    const made = await world.call(full.owner, 'createPair', {
      params: params(),
      body: { name: called('Pair'), species: 'amphiprion-ocellaris', tankId: cold.id },
    })
    expect(made.problem?.fields).toMatchObject([{ path: 'tankId' }])
    const home = await tank()
    await pair(home.id)
    const cooled = await world.call(full.owner, 'changeTank', {
      params: { roomId, tankId: home.id },
      body: { temperatureC: 2.6, version: home.version },
    })
    expect(cooled.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'temperatureC', received: 2.6 }] })
  })

  test.each([10, 40])('a clutch of every species is forecast in water of %d degrees', async (temperatureC) => {
    for (const species of await world.ok(full.owner, 'listSpecies')) {
      const home = await world.ok(full.owner, 'createTank', {
        params: params(),
        body: { name: called('Home'), kind: 'broodstock', volumeL: 80, temperatureC, salinity: 33 },
      })
      const parents = await world.ok(full.owner, 'createPair', {
        params: params(),
        body: { name: called('Pair'), species: species.id, tankId: home.id },
      })
      const laid = await world.ok(full.owner, 'createClutch', {
        params: params(),
        body: { pairId: parents.id, spawnedAt: minutesFrom(world, -1440), eggs: 100 },
      })
      expect(laid.state).toBe('incubating')
    }
  })

  test('nothing moves into a tank that is out of use', async () => {
    const gone = await tank()
    await world.ok(full.owner, 'endTank', {
      params: { roomId, tankId: gone.id },
      body: { reason: 'cracked', version: gone.version },
    })
    const moved = await world.call(full.owner, 'changePair', {
      params: { roomId, pairId: full.pair.id },
      body: { tankId: gone.id, version: full.pair.version },
    })
    expect(moved.problem?.fields).toMatchObject([{ path: 'tankId' }])
    const made = await world.call(full.owner, 'createPair', {
      params: params(),
      body: { name: called('Pair'), species: 'amphiprion-ocellaris', tankId: gone.id },
    })
    expect(made.problem?.fields).toMatchObject([{ path: 'tankId' }])
  })

  test('a species that nobody knows is refused with the ones that are', async () => {
    const answer = await world.call(full.owner, 'createPair', {
      params: params(),
      body: { name: called('Pair'), species: 'carassius-auratus', tankId: full.pairTank.id },
    })
    expect(answer.problem?.detail).toContain('amphiprion-ocellaris')
  })

  test('a batch is recorded once it has hatched, with a species that its clutches have', async () => {
    const record = (body: object) =>
      send(world, full.owner, 'createLarvalBatch', {
        params: params(),
        body: { name: called('Batch'), tankId: full.larvalTank.id, hatchedOn: today(), ...body },
      })
    const tomorrow = minutesFrom(world, 1440).slice(0, 10)
    const paths = async (body: object) => (await record(body)).problem?.fields?.map((field) => field.path)
    expect(await paths({ species: 'amphiprion-ocellaris', hatchedOn: tomorrow })).toEqual(['hatchedOn'])
    expect(await paths({})).toEqual(['species'])
    expect(await paths({ species: 'pterapogon-kauderni', clutchIds: [full.clutch.id] })).toEqual(['species'])
    expect(await paths({ clutchIds: [full.clutch.id, full.clutch.id] })).toEqual(['clutchIds'])
    expect(await paths({ clutchIds: [full.pair.id] })).toEqual(['clutchIds'])
  })

  test('a hatch turns its clutch into a hatched one', async () => {
    const laid = await clutch()
    await world.ok(full.owner, 'createLarvalBatch', {
      params: params(),
      body: { name: called('Batch'), tankId: full.larvalTank.id, clutchIds: [laid.id], hatchedOn: today(), larvae: 80 },
    })
    const clutches = await world.ok(full.owner, 'listClutches', { params: params() })
    expect(clutches.find((each) => each.id === laid.id)).toMatchObject({ state: 'hatched', nights: [] })
  })

  test('a feed link is made once, not to a backup, and ends no earlier than it began', async () => {
    const link = await feedLink()
    const again = (body: object) =>
      send(world, full.owner, 'createFeedLink', {
        params: params(),
        body: { batchId: link.batchId, cultureId: link.cultureId, fromOn: today(), ...body },
      })
    expect((await again({})).problem?.code).toBe('wrong_state')
    const backup = await culture({ isBackup: true })
    expect((await again({ cultureId: backup.id })).problem?.code).toBe('wrong_state')
    const early = await world.call(full.owner, 'endFeedLink', {
      params: { roomId, feedLinkId: link.id },
      body: { untilOn: '2026-01-01', version: link.version },
    })
    expect(early.problem?.fields).toMatchObject([{ path: 'untilOn' }])
  })

  test('a batch that ends is fed from nowhere from tomorrow on', async () => {
    const link = await feedLink()
    const batches = await world.ok(full.owner, 'listLarvalBatches', { params: params() })
    const { version } = batches.find((each) => each.id === link.batchId)!
    await world.ok(full.owner, 'endLarvalBatch', {
      params: { roomId, batchId: link.batchId },
      body: { reason: 'all moved to grow-out', version },
    })
    const links = await world.ok(full.owner, 'listFeedLinks', { params: params() })
    expect(links.find((each) => each.id === link.id)?.untilOn).toBe(today())
  })

  test('a culture that ends feeds nobody from tomorrow on', async () => {
    const source = await culture()
    const fed = await batch()
    const link = (fromOn: string, batchId = fed.id) =>
      world.ok(full.owner, 'createFeedLink', { params: params(), body: { batchId, cultureId: source.id, fromOn } })
    const running = await link(today())
    const planned = await link(minutesFrom(world, 3 * 1440).slice(0, 10), (await batch()).id)
    await world.ok(full.owner, 'endCulture', {
      params: { roomId, cultureId: source.id },
      body: { reason: 'crashed overnight', version: source.version },
    })
    const links = await world.ok(full.owner, 'listFeedLinks', { params: params() })
    expect(links.find((each) => each.id === running.id)?.untilOn).toBe(today())
    expect(links.map((each) => each.id)).not.toContain(planned.id)
  })
})

describe('the room', () => {
  const setUp = (body: object) =>
    send(world, full.owner, 'createRoom', {
      body: {
        ...{
          name: called('Room'),
          timeZone: 'Pacific/Auckland',
          units: 'us',
          lightsOnAt: '08:00',
          lightsOffAt: '20:00',
        },
        ...{ salinity: 33, temperatureC: 26 },
        ...body,
      },
    })
  const plain = { kind: 'storage', volumeL: 10, temperatureC: 25, salinity: 33 }

  test('is set up whole or not at all', async () => {
    const rooms = () => world.database.prisma.room.count()
    const before = await rooms()
    const answer = await setUp({
      tanks: [
        { name: 'A', ...plain },
        { name: 'B', ...plain },
        { name: 'a', ...plain },
      ],
    })
    expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'name' }] })
    const noStrain = { name: 'R', kind: 'rotifer', volumeL: 10, temperatureC: 25, salinity: 20 }
    expect((await setUp({ cultures: [noStrain] })).status).toBe(400)
    expect(await rooms()).toBe(before)
  })

  test.each([
    ['a zone that is none', { timeZone: 'Mars/Olympus' }],
    [
      'two rounds of one id',
      {
        rounds: [
          { id: 'a', name: 'A', at: '07:00' },
          { id: 'a', name: 'B', at: '08:00' },
        ],
      },
    ],
    [
      'rounds out of order',
      {
        rounds: [
          { id: 'a', name: 'A', at: '09:00' },
          { id: 'b', name: 'B', at: '08:00' },
        ],
      },
    ],
    ['no round', { rounds: [] }],
    ['a time that is none', { lightsOnAt: '24:00' }],
    ['water that is none', { salinity: 400 }],
  ])('with %s is refused', async (_what, body) => {
    expect((await setUp(body)).problem?.code).toBe('invalid_input')
  })

  test('is changed by its owner from the version that was seen', async () => {
    const before = await world.ok(full.owner, 'getRoom', { params: params() })
    const change = (version: number, name = 'Renamed') =>
      world.call(full.owner, 'changeRoom', { params: params(), body: { name, version } })
    const changed = await change(before.version)
    expect(changed.body).toMatchObject({ name: 'Renamed', version: before.version + 1 })
    expect(await newest()).toMatchObject({ action: 'room.change', detail: { name: 'Renamed' } })
    const stale = await change(before.version, 'Again')
    expect(stale.problem).toMatchObject({ code: 'stale_version', current: { name: 'Renamed' } })
  })

  test('with other rounds draws its open tasks up in them, and keeps what is done', async () => {
    const done = (await tasksOf(world, full.owner, roomId)).find(
      (task) => task.ruleId === 'room-equipment' && task.state === 'open',
    )!
    await world.ok(full.owner, 'signOffTask', { params: { roomId, taskId: done.id }, body: {} })
    const { version } = await world.ok(full.owner, 'getRoom', { params: params() })
    const rounds = [
      { id: 'early', name: 'Early', at: '06:00' },
      { id: 'late', name: 'Late', at: '21:30' },
    ]
    await world.ok(full.owner, 'changeRoom', { params: params(), body: { rounds, version } })
    const tasks = await tasksOf(world, full.owner, roomId)
    const open = tasks.filter((task) => task.state === 'open')
    expect(open.length).toBeGreaterThan(0)
    for (const task of open) expect(['early', 'late']).toContain(task.roundId)
    expect(tasks.find((task) => task.id === done.id)?.state).toBe('done')
  })
})
