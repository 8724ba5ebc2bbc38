import { describe, expect, test } from 'vitest'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, roomId, world } from './one-room.ts'

inOneRoom()

describe('a culture', () => {
  test('a rotifer culture says its strain, at first and ever after', async () => {
    const body = { name: make.called('R'), kind: 'rotifer' as const, volumeL: 16, temperatureC: 25, salinity: 20 }
    const without = await world.call(full.owner, 'createCulture', { params: { roomId }, body })
    expect(without.problem?.fields).toMatchObject([{ path: 'strain' }])
    const made = await make.culture()
    const taken = await world.call(full.owner, 'changeCulture', {
      params: { roomId, cultureId: made.id },
      body: { strain: null, version: made.version },
    })
    expect(taken.problem?.fields).toMatchObject([{ path: 'strain' }])
    const algae = await world.ok(full.owner, 'createCulture', {
      params: { roomId },
      body: { ...body, kind: 'microalgae' },
    })
    expect(algae.strain).toBeNull()
  })

  test('a culture that starts tomorrow is not started yet', async () => {
    const answer = await world.call(full.owner, 'createCulture', {
      params: { roomId },
      body: {
        ...{ name: make.called('R'), kind: 'rotifer', strain: 'L', volumeL: 16, temperatureC: 25, salinity: 20 },
        startedAt: minutesFrom(world, 1440),
      },
    })
    expect(answer.problem?.fields).toMatchObject([{ path: 'startedAt' }])
  })

  test('a culture from a parent says where its animals came from', async () => {
    const made = await make.culture({ parentCultureId: full.culture.id, startDensityPerMl: 70 })
    const { facts } = await world.ok(full.owner, 'listFacts', { params: { roomId }, query: { subjectId: made.id } })
    expect(facts).toMatchObject([{ kind: 'inoculation', data: { densityPerMl: 70, fromCultureId: full.culture.id } }])
  })
})
