import { describe, expect, test } from 'vitest'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, roomId, world } from './one-room.ts'

inOneRoom()

describe('a tank', () => {
  test('a tank that fish live in is not taken out of use', async () => {
    const home = await make.tank()
    const inside = await make.pair(home.id)
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
    const home = await make.tank()
    await make.batch({ tankId: home.id })
    const answer = await world.call(full.owner, 'endTank', {
      params: { roomId, tankId: home.id },
      body: { reason: 'leaks', version: home.version },
    })
    expect(answer.problem?.code).toBe('wrong_state')
  })

  test('nothing lives in water colder than ten degrees, whichever way it would come to that', async () => {
    const cold = await world.ok(full.owner, 'createTank', {
      params: { roomId },
      body: { name: make.called('Cellar'), kind: 'storage', volumeL: 200, temperatureC: 8, salinity: 33 },
    })
    const made = await world.call(full.owner, 'createPair', {
      params: { roomId },
      body: { name: make.called('Pair'), species: 'amphiprion-ocellaris', tankId: cold.id },
    })
    expect(made.problem?.fields).toMatchObject([{ path: 'tankId' }])
    const home = await make.tank()
    await make.pair(home.id)
    const cooled = await world.call(full.owner, 'changeTank', {
      params: { roomId, tankId: home.id },
      body: { temperatureC: 2.6, version: home.version },
    })
    expect(cooled.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'temperatureC', received: 2.6 }] })
  })

  test.each([10, 40])('a clutch of every species is forecast in water of %d degrees', async (temperatureC) => {
    for (const species of await world.ok(full.owner, 'listSpecies')) {
      const home = await world.ok(full.owner, 'createTank', {
        params: { roomId },
        body: { name: make.called('Home'), kind: 'broodstock', volumeL: 80, temperatureC, salinity: 33 },
      })
      const parents = await world.ok(full.owner, 'createPair', {
        params: { roomId },
        body: { name: make.called('Pair'), species: species.id, tankId: home.id },
      })
      const laid = await world.ok(full.owner, 'createClutch', {
        params: { roomId },
        body: { pairId: parents.id, spawnedAt: minutesFrom(world, -1440), eggs: 100 },
      })
      expect(laid.state).toBe('incubating')
    }
  })

  test('nothing moves into a tank that is out of use', async () => {
    const gone = await make.tank()
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
      params: { roomId },
      body: { name: make.called('Pair'), species: 'amphiprion-ocellaris', tankId: gone.id },
    })
    expect(made.problem?.fields).toMatchObject([{ path: 'tankId' }])
  })
})
