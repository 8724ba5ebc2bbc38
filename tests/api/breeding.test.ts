import { describe, expect, test } from 'vitest'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()

describe('pairs, clutches and batches', () => {
  test('a species that nobody knows is refused with the ones that are', async () => {
    const answer = await world.call(full.owner, 'createPair', {
      params: { roomId },
      body: { name: make.called('Pair'), species: 'carassius-auratus', tankId: full.pairTank.id },
    })
    expect(answer.problem?.detail).toContain('amphiprion-ocellaris')
  })

  test('a batch is recorded once it has hatched, with a species that its clutches have', async () => {
    const record = (body: object) =>
      send(world, full.owner, 'createLarvalBatch', {
        params: { roomId },
        body: { name: make.called('Batch'), tankId: full.larvalTank.id, hatchedOn: make.today(), ...body },
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
    const laid = await make.clutch()
    await world.ok(full.owner, 'createLarvalBatch', {
      params: { roomId },
      body: {
        name: make.called('Batch'),
        tankId: full.larvalTank.id,
        clutchIds: [laid.id],
        hatchedOn: make.today(),
        larvae: 80,
      },
    })
    const clutches = await world.ok(full.owner, 'listClutches', { params: { roomId } })
    expect(clutches.find((each) => each.id === laid.id)).toMatchObject({ state: 'hatched', nights: [] })
  })

  test('floating eggs are looked for once a larval tank is there for them, and until then their pair says what is missing', async () => {
    const pair = await world.ok(full.caretaker, 'createPair', {
      params: { roomId },
      body: { name: make.called('Dragonets'), species: 'other-1f-synchiropus-splendidus', tankId: full.pairTank.id },
    })
    const told = async () => {
      const pairs = await world.ok(full.viewer, 'listPairs', { params: { roomId } })
      const { tasks } = await world.ok(full.viewer, 'getDay', { params: { roomId, date: make.today() } })
      const isAsked = tasks.some(
        ({ subject, ruleId, state }) => subject.id === pair.id && ruleId === 'pair-look-for-eggs' && state === 'open',
      )
      return { lacks: pairs.find(({ id }) => id === pair.id)?.eggLookLacks, isAsked }
    }
    expect(pair.eggLookLacks).toEqual(['larval_tank'])
    expect(await told()).toEqual({ lacks: ['larval_tank'], isAsked: false })
    await world.ok(full.caretaker, 'createTank', {
      params: { roomId },
      body: { name: make.called('Larval tank'), kind: 'larval', volumeL: 30, temperatureC: 26, salinity: 33 },
    })
    expect(await told()).toEqual({ lacks: [], isAsked: true })
    const { version } = pair
    const resting = await world.ok(full.caretaker, 'changePair', {
      params: { roomId, pairId: pair.id },
      body: { isResting: true, version },
    })
    expect(resting.eggLookLacks).toEqual([])
  })
})
