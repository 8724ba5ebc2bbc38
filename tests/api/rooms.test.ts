import { RoomSchema, stations } from '@fryward/shared'
import { describe, expect, test } from 'vitest'
import { roomSetup } from '../support/world.ts'
import { tasksOf } from './full-room.ts'
import { full, inOneRoom, make, newestAudit, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()

describe('the room', () => {
  const setUp = (body: object) =>
    send(world, full.owner, 'createRoom', {
      body: {
        ...{
          name: make.called('Room'),
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
    ['a way to write numbers that no room can have', { locale: 'tlh-KX' }],
    ['no round', { rounds: [] }],
    ['a time that is none', { lightsOnAt: '24:00' }],
    ['water that is none', { salinity: 400 }],
  ])('with %s is refused', async (_what, body) => {
    const { problem } = await setUp(body)
    expect(problem).toMatchObject({ code: 'invalid_input', fields: [{ path: Object.keys(body)[0] }] })
  })

  const swims = {
    timeZone: 'Europe/Lisbon',
    concentrate: { name: 'Green bottle', cellsPerMl: 65e9 },
    tanks: [
      { name: 'L1', kind: 'larval', volumeL: 40, temperatureC: 27, salinity: 30 },
      { name: 'G1', kind: 'grow_out', volumeL: 80, temperatureC: 26, salinity: 33 },
    ],
    cultures: [
      { name: 'R1', kind: 'rotifer', strain: 'L', volumeL: 18, temperatureC: 25, salinity: 20, startDensityPerMl: 200 },
    ],
  }
  const hatchedOn = '2026-03-05'
  const larvae = { name: 'Larvae 1', species: 'amphiprion-ocellaris', tank: 'L1', hatchedOn, fedFrom: 'R1' }

  test('feeds the larvae and juveniles that swim already from its first list on', async () => {
    const setUpSo = async (more: object) => {
      const { json, text } = await setUp({ ...swims, ...more })
      const { id } = RoomSchema.parse(json, { error: () => text })
      const { tasks, gaps } = await world.ok(full.owner, 'getDay', { params: { roomId: id, date: 'today' } })
      return { tasks, gaps }
    }
    const juveniles = { name: 'Juveniles 1', species: 'amphiprion-ocellaris', tank: 'G1', settledOn: '2026-02-20' }
    const known = await setUpSo({ batches: [{ ...larvae, larvae: 300 }], groups: [{ ...juveniles, number: 40 }] })
    const fed = ({ tasks }: typeof known) => [
      ...new Set(tasks.filter(({ verb }) => verb === 'feed').map(({ ruleId }) => ruleId)),
    ]
    expect(fed(known)).toEqual(expect.arrayContaining(['larval-prey-top-up', 'juvenile-feed']))
    expect(known.gaps).toEqual([])
    // Nobody has counted them: they are fed by the water they swim in, and by the pinch.
    const uncounted = await setUpSo({ batches: [larvae], groups: [juveniles] })
    expect(fed(uncounted)).toEqual(expect.arrayContaining(['larval-prey-top-up', 'juvenile-feed']))
    const other = { species: 'other-9-synchiropus-splendidus' }
    const unprofiled = await setUpSo({ batches: [{ ...larvae, ...other }], groups: [{ ...juveniles, ...other }] })
    expect(fed(unprofiled)).toEqual(expect.arrayContaining(['larval-prey-top-up', 'juvenile-feed']))
  })

  test.each([
    ['larvae in a tank that it has not', { batches: [{ ...larvae, tank: 'L9' }] }, 'batches.0.tank'],
    ['larvae fed from a culture that it has not', { batches: [{ ...larvae, fedFrom: 'R9' }] }, 'batches.0.fedFrom'],
    ['larvae still to hatch', { batches: [{ ...larvae, hatchedOn: '2030-01-01' }] }, 'hatchedOn'],
    ['fish of a species that says nothing', { batches: [{ ...larvae, species: 'other-0-gramma' }] }, 'species'],
  ])('with %s is refused', async (_what, body, path) => {
    expect((await setUp({ ...swims, ...body })).problem).toMatchObject({ code: 'invalid_input', fields: [{ path }] })
  })

  test('says how its people write numbers and dates, and the British way where nobody said', async () => {
    const setUpSo = (more: object) => setUp(more).then(({ json }) => json)
    expect(await setUpSo({})).toMatchObject({ locale: 'en-GB' })
    expect(await setUpSo({ locale: 'en-IN' })).toMatchObject({ locale: 'en-IN' })
    const before = await world.ok(full.owner, 'getRoom', { params: { roomId } })
    const changed = await world.ok(full.owner, 'changeRoom', {
      params: { roomId },
      body: { locale: 'de-CH', version: before.version },
    })
    expect(changed).toMatchObject({ locale: 'de-CH', units: before.units })
  })

  test('is changed by its owner from the version that was seen', async () => {
    const before = await world.ok(full.owner, 'getRoom', { params: { roomId } })
    const change = (version: number, name = 'Renamed') =>
      world.call(full.owner, 'changeRoom', { params: { roomId }, body: { name, version } })
    const changed = await change(before.version)
    expect(changed.body).toMatchObject({ name: 'Renamed', version: before.version + 1 })
    expect(await newestAudit()).toMatchObject({ action: 'room.change', detail: { name: 'Renamed' } })
    const stale = await change(before.version, 'Again')
    expect(stale.problem).toMatchObject({ code: 'stale_version', current: { name: 'Renamed' } })
  })

  test('with other rounds draws its open tasks up in them, and keeps what is done', async () => {
    const done = (await tasksOf(world, full.owner, roomId)).find(
      (task) => task.ruleId === 'room-equipment' && task.state === 'open',
    )!
    await world.ok(full.owner, 'signOffTask', { params: { roomId, taskId: done.id }, body: {} })
    const { version } = await world.ok(full.owner, 'getRoom', { params: { roomId } })
    const rounds = [
      { id: 'early', name: 'Early', at: '06:00' },
      { id: 'late', name: 'Late', at: '21:30' },
    ]
    await world.ok(full.owner, 'changeRoom', { params: { roomId }, body: { rounds, version } })
    const tasks = await tasksOf(world, full.owner, roomId)
    const open = tasks.filter((task) => task.state === 'open')
    expect(open.length).toBeGreaterThan(0)
    for (const task of open) expect(['early', 'late']).toContain(task.roundId)
    expect(tasks.find((task) => task.id === done.id)?.state).toBe('done')
  })

  test("has its stations moved within the walk by its owner, but no animals after quarantine's", async () => {
    const { version, stationOrder } = await world.ok(full.owner, 'getRoom', { params: { roomId } })
    expect(stationOrder).toEqual([...stations])
    const change = (order: readonly (typeof stations)[number][]) =>
      world.call(full.owner, 'changeRoom', {
        params: { roomId },
        body: { version, stationOrder: [...order] },
      })
    const last = ['microalgae', 'live_food', 'juveniles', 'broodstock', 'quarantine', 'larvae', 'room'] as const
    expect((await change(last)).problem).toMatchObject({ code: 'invalid_input' })
    expect((await change(stations.slice(1))).problem).toMatchObject({ code: 'invalid_input' })
    const moved = ['room', 'microalgae', 'larvae', 'live_food', 'juveniles', 'broodstock', 'quarantine'] as const
    expect((await change(moved)).body.stationOrder).toEqual([...moved])
  })
})

test('a room is set up with the pairs that spawn already, each in one of its tanks, or not at all', async () => {
  const owner = await world.person('Sets up')
  await world.database.prisma.server.update({ where: { id: 1 }, data: { claimedBy: owner.userId } })
  const tanks = [{ name: 'T1', kind: 'broodstock' as const, volumeL: 80, temperatureC: 27, salinity: 33 }]
  const pair = { name: 'Pair 1', species: 'amphiprion-ocellaris', tank: 'T1', formedOn: '2026-01-05' }
  const before = await world.database.prisma.room.count()
  const wrong = { ...roomSetup, tanks, pairs: [{ ...pair, tank: 'T2' }] }
  expect((await world.call(owner, 'createRoom', { body: wrong })).problem?.fields).toMatchObject([
    { path: 'pairs.0.tank' },
  ])
  expect(await world.database.prisma.room.count()).toBe(before)
  const { id } = await world.ok(owner, 'createRoom', { body: { ...roomSetup, tanks, pairs: [pair] } })
  const [tank] = await world.ok(owner, 'listTanks', { params: { roomId: id } })
  expect(await world.ok(owner, 'listPairs', { params: { roomId: id } })).toMatchObject([
    { name: 'Pair 1', tankId: tank!.id, formedOn: '2026-01-05', species: 'amphiprion-ocellaris' },
  ])
})
