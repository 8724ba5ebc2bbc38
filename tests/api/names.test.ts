import { describe, expect, test } from 'vitest'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, roomId, world } from './one-room.ts'

inOneRoom()

describe('names', () => {
  test.each(['Pair tank', 'pair TANK', '  Pair tank  ', 'R1', 'Pair 1'])('"%s" is taken already', async (name) => {
    const answer = await world.call(full.owner, 'createTank', {
      params: { roomId },
      body: { name, kind: 'storage', volumeL: 10, temperatureC: 25, salinity: 33 },
    })
    expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'name' }] })
  })

  test('a thing may be renamed to its own name in other letters, and not to that of another', async () => {
    const made = await make.tank()
    const rename = (name: string, version: number) =>
      world.call(full.owner, 'changeTank', { params: { roomId, tankId: made.id }, body: { name, version } })
    const loud = await rename(made.name.toUpperCase(), made.version)
    expect(loud.body.name).toBe(made.name.toUpperCase())
    expect((await rename('R1', loud.body.version)).problem?.fields).toMatchObject([{ path: 'name' }])
  })

  test('two that are made with one name at the same instant are one', async () => {
    const name = make.called('Race')
    const body = { name, kind: 'storage' as const, volumeL: 10, temperatureC: 25, salinity: 33 }
    const answers = await Promise.all(
      [full.owner, full.caretaker].map((person) => world.call(person, 'createTank', { params: { roomId }, body })),
    )
    expect(answers.map((answer) => answer.status).sort()).toEqual([201, 400])
  })

  test('a clutch and a batch without a name get one that fits, a second of the day another', async () => {
    const long = await world.ok(full.owner, 'createPair', {
      params: { roomId },
      body: {
        name: `${'Long '.repeat(15)}🐟${make.called('')}`,
        species: 'amphiprion-ocellaris',
        tankId: full.pairTank.id,
      },
    })
    const lay = () =>
      world.ok(full.owner, 'createClutch', {
        params: { roomId },
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
