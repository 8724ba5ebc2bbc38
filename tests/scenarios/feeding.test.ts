import type { Task } from '@fryward/shared'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { type BreedingRoom, openBreedingRoom } from './breeding-room.ts'

let room: BreedingRoom
let cultureId: string
const tankNames = ['Larval A', 'Larval B', 'Larval C']

beforeEach(async () => {
  room = await openBreedingRoom({
    tanks: tankNames.map((name) => ({ name, kind: 'larval' as const, volumeL: 40, temperatureC: 27, salinity: 30 })),
  })
  const [culture] = await room.world.ok(room.owner, 'listCultures', { params: { roomId: room.roomId } })
  cultureId = culture!.id
})
afterEach(() => room.world.close())

/** Ocellaris bought in, so many days after their hatch night, fed from the room's one culture. */
async function batchIn(tankName: string, larvae: number, hatchedOn: string): Promise<string> {
  const params = { roomId: room.roomId }
  const tanks = await room.world.ok(room.owner, 'listTanks', { params })
  const tank = tanks.find(({ name }) => name === tankName)!
  const batch = await room.world.ok(room.owner, 'createLarvalBatch', {
    params,
    body: { tankId: tank.id, species: 'amphiprion-ocellaris', hatchedOn, larvae },
  })
  await room.world.ok(room.owner, 'createFeedLink', {
    params,
    body: { batchId: batch.id, cultureId, fromOn: hatchedOn },
  })
  return batch.id
}

const litresOf = (tasks: readonly Task[]) =>
  tasks.reduce((sum, { amount }) => sum + (amount?.unit === 'mL' ? amount.value / 1000 : (amount?.value ?? 0)), 0)

describe('three batches on one culture of 18 L', () => {
  test('take no more than half of it in a day, in three lit feeds each, and no more after the first ones are given', async () => {
    await room.count(cultureId, 150)
    for (const name of tankNames) await batchIn(name, 300, '2026-03-07')
    const feeds = await room.tasks('larval-prey-top-up')
    expect(feeds.map(({ roundId }) => roundId).sort()).toEqual(
      ['evening', 'midday', 'morning'].flatMap((round) => [round, round, round]),
    )
    // A jug's mark at each of nine feeds.
    expect(litresOf(feeds)).toBeLessThan(9.3)
    expect(litresOf(feeds)).toBeGreaterThan(8)
    const mornings = feeds.filter(({ roundId }) => roundId === 'morning')
    for (const task of mornings) await room.signOff(task)
    const after = await room.tasks('larval-prey-top-up')
    expect(litresOf(mornings) + litresOf(after)).toBeLessThan(9.3)
  })

  test('are told that it has nothing to give at its floor of 50 per mL, each of them', async () => {
    await room.count(cultureId, 50)
    for (const name of tankNames) await batchIn(name, 300, '2026-03-07')
    const { gaps } = await room.today()
    expect(gaps.filter(({ ruleId }) => ruleId === 'larval-prey-top-up')).toHaveLength(3)
    expect(await room.tasks('larval-prey-top-up')).toEqual([])
  })
})

test('Artemia is asked for by the number of larvae, its last feed two hours before dark over their own tank', async () => {
  const feedsOf = async (name: string, larvae: number) => {
    const batchId = await batchIn(name, larvae, '2026-03-01')
    const feeds = await room.tasks('larval-artemia-feed', batchId)
    return feeds.map(({ roundId, amount }) => [roundId, amount?.value])
  }
  const params = { roomId: room.roomId }
  const tanks = await room.world.ok(room.owner, 'listTanks', { params })
  const { id: tankId, version } = tanks.find(({ name }) => name === 'Larval B')!
  await room.world.ok(room.owner, 'changeTank', { params: { ...params, tankId }, body: { lightHours: 12, version } })
  // Day 8 in 40 L: 200 nauplii a larva a day, between half a nauplius a mL and three.
  const three = ['morning', 'midday', 'evening'].map((round) => [round, 20_000])
  expect(await feedsOf('Larval A', 50)).toEqual(three)
  // Twelve hours from 07:00: the evening's round at 18:30 is too near the dark. Of 160,000 a day each feed has what is eaten until
  // the next one: 5.5 of the twelve hours come before 12:30.
  const uneven = { morning: 73_000, midday: 87_000 }
  expect(await feedsOf('Larval B', 800)).toEqual(Object.entries(uneven))
})
