import type { Clutch, Concentrate, Culture, FeedLink, LarvalBatch, Pair, Tank } from '@fryward/shared'
import type { World } from '../support/world.ts'
import { type FullRoom, minutesFrom } from './full-room.ts'

/** Makes more of what a full room has, each under a name of its own. */
export type Makers = {
  called: (what: string) => string
  today: () => string
  tank: (name?: string) => Promise<Tank>
  culture: (more?: object) => Promise<Culture>
  pair: (tankId?: string) => Promise<Pair>
  batch: (more?: object) => Promise<LarvalBatch>
  clutch: () => Promise<Clutch>
  concentrate: () => Promise<Concentrate>
  feedLink: () => Promise<FeedLink>
}

export function makersIn(world: World, full: FullRoom): Makers {
  const params = { roomId: full.roomId }
  let serial = 0
  const called = (what: string) => {
    serial += 1
    return `${what} ${serial}`
  }
  const today = () => world.clock.now().slice(0, 10)
  const tank = (name = called('Tank')) =>
    world.ok(full.caretaker, 'createTank', {
      params,
      body: { name, kind: 'grow_out', volumeL: 60, temperatureC: 26, salinity: 33 },
    })
  const culture = (more: object = {}) =>
    world.ok(full.caretaker, 'createCulture', {
      params,
      body: { name: called('R'), kind: 'rotifer', strain: 'S', volumeL: 16, temperatureC: 25, salinity: 20, ...more },
    })
  const pair = (tankId = full.pairTank.id) =>
    world.ok(full.caretaker, 'createPair', {
      params,
      body: { name: called('Pair'), species: 'amphiprion-ocellaris', tankId },
    })
  const batch = (more: object = {}) =>
    world.ok(full.standIn, 'createLarvalBatch', {
      params,
      body: {
        ...{ name: called('Batch'), tankId: full.larvalTank.id, species: 'amphiprion-ocellaris' },
        ...{ hatchedOn: today(), larvae: 50, ...more },
      },
    })
  const clutch = () =>
    world.ok(full.standIn, 'createClutch', {
      params,
      body: { pairId: full.pair.id, name: called('Clutch'), spawnedAt: minutesFrom(world, -5), eggs: 90 },
    })
  const concentrate = () =>
    world.ok(full.caretaker, 'createConcentrate', {
      params,
      body: { name: called('Bottle'), cellsPerMl: 5e10 },
    })
  const feedLink = async () => {
    const fed = await batch()
    return world.ok(full.caretaker, 'createFeedLink', {
      params,
      body: { batchId: fed.id, cultureId: full.culture.id, fromOn: today() },
    })
  }
  return { called, today, tank, culture, pair, batch, clutch, concentrate, feedLink }
}
