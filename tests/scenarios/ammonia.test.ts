import { afterEach, beforeEach, expect, test } from 'vitest'
import { type BreedingRoom, openBreedingRoom } from './breeding-room.ts'

let room: BreedingRoom

beforeEach(async () => {
  room = await openBreedingRoom({})
})
afterEach(() => room.world.close())

test('ammonia that was read and changed away is tested again in the next round of the same day', async () => {
  const params = { roomId: room.roomId }
  const tanks = await room.world.ok(room.owner, 'listTanks', { params })
  const tank = tanks.find(({ kind }) => kind === 'larval')!
  const batch = await room.world.ok(room.owner, 'createLarvalBatch', {
    params,
    body: { tankId: tank.id, species: 'amphiprion-ocellaris', hatchedOn: '2026-03-07', larvae: 200 },
  })
  const tests = () => room.tasks('larval-ammonia-test', batch.id)
  const [first] = await tests()
  // A measurement is typed: there is no usual value that one tap could book.
  const reading = first!.fields.find(({ name }) => name === 'totalAmmoniaNMgPerL')
  expect(reading).toMatchObject({ isRequired: true, usual: null })
  await room.signOff(first!, { totalAmmoniaNMgPerL: 0.5, pH: 8.1 })
  expect(await tests()).toEqual([])
  const [change] = await room.tasks('larval-ammonia-act', batch.id)
  room.world.clock.advanceMinutes(30)
  await room.signOff(change!)
  expect((await tests()).map(({ roundId }) => roundId)).toEqual(['midday'])
})
