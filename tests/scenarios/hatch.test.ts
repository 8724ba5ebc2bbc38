import type { Clutch, Culture, Task } from '@fryward/shared'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { type BreedingRoom, openBreedingRoom } from './breeding-room.ts'

let room: BreedingRoom
let clutch: Clutch
let cultures: Culture[]

// Ocellaris at 27 C, laid on 3 March: likeliest in the night of the 9th or 10th (148 h at 27 C: Yasir & Qin 2007).
beforeEach(async () => {
  room = await openBreedingRoom(
    { tanks: [{ name: 'Pair tank', kind: 'broodstock', volumeL: 80, temperatureC: 27, salinity: 33 }] },
    { at: '2026-03-11T07:30:00.000Z' },
  )
  const { world, owner, roomId } = room
  const params = { roomId }
  const [tank] = await world.ok(owner, 'listTanks', { params })
  const pair = await world.ok(owner, 'createPair', {
    params,
    body: { name: 'Pair A', species: 'amphiprion-ocellaris', tankId: tank!.id },
  })
  clutch = await world.ok(owner, 'createClutch', {
    params,
    body: { pairId: pair.id, spawnedAt: '2026-03-03T12:00:00.000Z', eggs: 400 },
  })
  cultures = await world.ok(owner, 'listCultures', { params })
  await room.count(cultures[0]!.id, 300)
})
afterEach(() => room.world.close())

const batches = () => room.world.ok(room.owner, 'listLarvalBatches', { params: { roomId: room.roomId } })
const morning = async (): Promise<Task> => (await room.tasks('clutch-morning-after', clutch.id))[0]!

describe('a hatch in a room with no empty larval tank', () => {
  test('makes a batch where the eggs were, numbered, fed from a culture, and its first feed is on this morning’s list', async () => {
    await room.signOff(await morning(), { hatched: 'all', larvae: 350 })
    const [batch, ...others] = await batches()
    expect(others).toEqual([])
    const [tank] = await room.world.ok(room.owner, 'listTanks', { params: { roomId: room.roomId } })
    expect(batch).toMatchObject({ tankId: tank!.id, hatchedOn: '2026-03-10', numberNow: { estimate: 350 } })
    const links = await room.world.ok(room.owner, 'listFeedLinks', { params: { roomId: room.roomId } })
    expect(links).toMatchObject([{ batchId: batch!.id, cultureId: cultures[0]!.id }])
    const feeds = await room.tasks('larval-prey-top-up', batch!.id)
    expect(feeds.map(({ roundId }) => roundId)).toContain('morning')
  })

  test('makes the tank that they are in, once its litres are said', async () => {
    const task = await morning()
    const params = { roomId: room.roomId }
    const refused = await room.world.call(room.owner, 'signOffTask', {
      params: { ...params, taskId: task.id },
      body: { values: { hatched: 'all', larvae: 350, tank: 'new' } },
    })
    expect(refused.problem?.fields?.map(({ path }) => path)).toEqual(['values.newTankL'])
    await room.signOff(task, { hatched: 'all', larvae: 350, tank: 'new', newTankL: 25 })
    const tanks = await room.world.ok(room.owner, 'listTanks', { params })
    const made = tanks.find(({ kind }) => kind === 'larval')
    expect(made).toMatchObject({ volumeL: 25, temperatureC: 27, salinity: 33 })
    expect((await batches()).map(({ tankId }) => tankId)).toEqual([made!.id])
  })

  test('taken back, the batch, its tasks and its feed link go, and the question is open again', async () => {
    const task = await morning()
    await room.signOff(task, { hatched: 'all', larvae: 350 })
    const [batch] = await batches()
    const params = { roomId: room.roomId }
    await room.world.ok(room.owner, 'undoTask', { params: { ...params, taskId: task.id }, body: {} })
    expect(await batches()).toEqual([])
    expect(await room.tasks('larval-prey-top-up', batch!.id)).toEqual([])
    const links = await room.world.ok(room.owner, 'listFeedLinks', { params })
    expect(links.filter(({ untilOn }) => untilOn === null)).toEqual([])
    await room.signOff(await morning(), { hatched: 'all', larvae: 300, night: '2026-03-09' })
    expect(await batches()).toMatchObject([{ hatchedOn: '2026-03-09', numberNow: { estimate: 300 } }])
  })

  test('a hatch before its eggs were laid is refused', async () => {
    const [tank] = await room.world.ok(room.owner, 'listTanks', { params: { roomId: room.roomId } })
    const answer = await room.world.call(room.owner, 'createLarvalBatch', {
      params: { roomId: room.roomId },
      body: { tankId: tank!.id, clutchIds: [clutch.id], hatchedOn: '2026-03-02' },
    })
    expect(answer.problem?.fields?.map(({ path }) => path)).toEqual(['hatchedOn'])
  })
})
