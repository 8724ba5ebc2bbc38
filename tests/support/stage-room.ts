import { localDate } from '@fryward/husbandry'
import { openDays } from '@fryward/room'
import type { BodyInputOf, Clutch, Culture, LarvalBatch, Pair, Role, Room, Tank, Task } from '@fryward/shared'
import type { Stage } from './stage.ts'
import { zoneAtHour } from './stage-zone.mjs'
import { openRoom, type Person } from './world.ts'

const dayMinutes = 1440

/** A small room that people have looked after for four days, at nine-something in its morning, whenever that is here. */
export type LivedInRoom = {
  room: Room
  roomId: string
  people: Record<Role, Person>
  larvalTank: Tank
  culture: Culture
  pair: Pair
  clutch: Clutch
  batch: LarvalBatch
  /** Path of a page of this room. */
  path: (page: string) => string
}

export const rounds = [
  { id: 'morning', name: 'Morning', at: '08:30' },
  { id: 'midday', name: 'Midday', at: '13:00' },
  { id: 'evening', name: 'Evening', at: '18:30' },
]

/** A zone in which it is between nine and ten in the morning now. */
export const morningZone = (): string => zoneAtHour(9)

export async function openLivedInRoom(
  stage: Stage,
  setup: Partial<BodyInputOf<'createRoom'>> = {},
): Promise<LivedInRoom> {
  const { world } = stage
  const { owner, room } = await openRoom(world, { timeZone: morningZone(), rounds, ...setup })
  const roomId = room.id
  const params = { roomId }
  const people = {
    owner,
    caretaker: await world.person('Carla', { roomId, role: 'caretaker' }),
    stand_in: await world.person('Sam', { roomId, role: 'stand_in' }),
    viewer: await world.person('Vera', { roomId, role: 'viewer' }),
  }
  const [pairTank, larvalTank] = await world.ok(owner, 'listTanks', { params })
  const [culture] = await world.ok(owner, 'listCultures', { params })
  if (!pairTank || !larvalTank || !culture) throw new Error('The room was set up without its vessels')
  const pair = await world.ok(owner, 'createPair', {
    params,
    body: { name: 'Copper pair', species: 'amphiprion-ocellaris', tankId: pairTank.id },
  })
  await openLists(stage, roomId)
  const { batch } = await hatch(stage, { owner, room, pair, tankId: larvalTank.id, cultureId: culture.id })
  const clutch = await countAndHarvest(stage, { owner, roomId, pair, culture, batch })
  world.clock.set(new Date().toISOString())
  await openLists(stage, roomId)
  const path = (page: string) => `/rooms/${roomId}/${page}`
  return { room, roomId, people, larvalTank, culture, pair, clutch, batch, path }
}

/** What the scheduler does at its next tick. */
async function openLists({ world }: Stage, roomId: string): Promise<void> {
  const actor = { kind: 'system', job: 'scheduler' } as const
  await openDays({ ctx: { database: world.database, actor, now: world.clock.now() }, roomId })
}

async function hatch(
  { world }: Stage,
  given: { owner: Person; room: Room; pair: Pair; tankId: string; cultureId: string },
) {
  const params = { roomId: given.room.id }
  const ago = (days: number) => new Date(Date.parse(world.clock.now()) - days * 86_400_000).toISOString()
  // The room's yesterday: by UTC it is another for some hours of each day.
  const yesterday = localDate({ timeZone: given.room.timeZone, at: ago(1) })
  const old = await world.ok(given.owner, 'createClutch', {
    params,
    body: { pairId: given.pair.id, spawnedAt: ago(9), eggs: 300 },
  })
  const batch = await world.ok(given.owner, 'createLarvalBatch', {
    params,
    body: { tankId: given.tankId, clutchIds: [old.id], hatchedOn: yesterday, larvae: 200 },
  })
  await world.ok(given.owner, 'createFeedLink', {
    params,
    body: { batchId: batch.id, cultureId: given.cultureId, fromOn: yesterday },
  })
  return { batch }
}

/** Four mornings: a culture that doubles and is thinned once, prey counted, eggs found on the second. */
async function countAndHarvest(
  stage: Stage,
  given: { owner: Person; roomId: string; pair: Pair; culture: Culture; batch: LarvalBatch },
): Promise<Clutch> {
  const { world } = stage
  const { owner, roomId, culture, batch } = given
  const record = (body: BodyInputOf<'recordFact'>) =>
    world.ok(owner, 'recordFact', { params: { roomId }, body: body as BodyInputOf<'recordFact'> })
  let clutch: Clutch | undefined
  for (const [day, perMl] of [90, 140, 210, 180].entries()) {
    if (day > 0) world.clock.advanceMinutes(dayMinutes)
    await openLists(stage, roomId)
    await record({
      kind: 'count',
      subjectId: culture.id,
      data: { of: 'culture', animals: [perMl - 3, perMl + 3], volumeMl: 1, eggs: 30, females: 100 },
    })
    await record({
      kind: 'count',
      subjectId: batch.id,
      data: { of: 'prey_rotifers', animals: [6, 7, 5], volumeMl: 1 },
    })
    if (day === 1)
      clutch = await world.ok(owner, 'createClutch', {
        params: { roomId },
        body: { pairId: given.pair.id, spawnedAt: world.clock.now(), eggs: 250 },
      })
    if (day === 2) {
      const parts = [{ to: 'larval_batch', subjectId: batch.id, volumeL: 3.6 } as const]
      await record({ kind: 'harvest', subjectId: culture.id, data: { volumeL: 3.6, parts } })
    }
    world.clock.advanceMinutes(1)
  }
  if (!clutch) throw new Error('No eggs were laid')
  return clutch
}

/** Today's tasks as they stand in the database's own answer. */
export async function todaysTasks({ world }: Stage, { roomId, people }: LivedInRoom): Promise<Task[]> {
  world.clock.set(new Date().toISOString())
  return (await world.ok(people.owner, 'getDay', { params: { roomId, date: 'today' } })).tasks
}
