import type { Clutch, Concentrate, Culture, FeedLink, LarvalBatch, Pair, Role, Room, Tank, Task } from '@fryward/shared'
import { openRoom, type Person, type World } from '../support/world.ts'

export type FullRoom = {
  room: Room
  roomId: string
  owner: Person
  caretaker: Person
  standIn: Person
  viewer: Person
  pairTank: Tank
  larvalTank: Tank
  culture: Culture
  concentrate: Concentrate
  pair: Pair
  clutch: Clutch
  batch: LarvalBatch
  feedLink: FeedLink
}

/**
 * A room that has run for two days by the world's clock: people of every role, one of each thing, counts and feedings
 * behind it. The clock stands on the third day, half an hour after the time it began at.
 */
export async function openFullRoom(
  world: World,
  { name = 'Back room', timeZone = 'Europe/Lisbon' }: { name?: string; timeZone?: string } = {},
): Promise<FullRoom> {
  const { owner, room } = await openRoom(world, { name, timeZone })
  const roomId = room.id
  const person = (called: string, role: Role) => world.person(called, { roomId, role })
  const caretaker = await person('Caretaker Carla', 'caretaker')
  const standIn = await person('Stand-in Sam', 'stand_in')
  const viewer = await person('Viewer Vera', 'viewer')
  const tanks = await world.ok(owner, 'listTanks', { params: { roomId } })
  const pairTank = named(tanks, 'Pair tank')
  const larvalTank = named(tanks, 'Larval tank')
  const culture = named(await world.ok(owner, 'listCultures', { params: { roomId } }), 'R1')
  const concentrate = named(await world.ok(owner, 'listConcentrates', { params: { roomId } }), 'Green bottle')
  const pair = await world.ok(owner, 'createPair', {
    params: { roomId },
    body: { name: 'Pair 1', species: 'amphiprion-ocellaris', tankId: pairTank.id },
  })
  const today = world.clock.now().slice(0, 10)
  const hatched = await world.ok(owner, 'createClutch', {
    params: { roomId },
    body: { pairId: pair.id, spawnedAt: minutesFrom(world, -9 * 1440), eggs: 300 },
  })
  const batch = await world.ok(owner, 'createLarvalBatch', {
    params: { roomId },
    body: { tankId: larvalTank.id, clutchIds: [hatched.id], hatchedOn: today, larvae: 200 },
  })
  const feedLink = await world.ok(owner, 'createFeedLink', {
    params: { roomId },
    body: { batchId: batch.id, cultureId: culture.id, fromOn: today },
  })
  for (const animals of [
    [60, 66],
    [90, 84],
  ]) {
    world.clock.advanceMinutes(1440)
    await world.ok(owner, 'recordFact', {
      params: { roomId },
      body: {
        kind: 'count',
        subjectId: culture.id,
        data: { of: 'culture', animals, volumeMl: 1, eggs: 30, females: 100 },
      },
    })
  }
  const clutch = await world.ok(owner, 'createClutch', {
    params: { roomId },
    body: { pairId: pair.id, spawnedAt: minutesFrom(world, -600), eggs: 250 },
  })
  world.clock.advanceMinutes(30)
  return {
    ...{ room, roomId, owner, caretaker, standIn, viewer, pairTank, larvalTank },
    ...{ culture, concentrate, pair, clutch, batch, feedLink },
  }
}

export function named<T extends { name: string }>(things: readonly T[], name: string): T {
  const found = things.find((thing) => thing.name === name)
  if (!found) throw new Error(`Nothing is named "${name}": ${things.map((thing) => thing.name).join(', ')}`)
  return found
}

export const minutesFrom = (world: World, minutes: number): string =>
  new Date(Date.parse(world.clock.now()) + minutes * 60_000).toISOString()

/** Today's tasks of a room as somebody sees them. */
export async function tasksOf(world: World, person: Person, roomId: string): Promise<Task[]> {
  return (await world.ok(person, 'getDay', { params: { roomId, date: 'today' } })).tasks
}
