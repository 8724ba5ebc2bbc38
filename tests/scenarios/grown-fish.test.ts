import { afterAll, beforeAll, expect, test } from 'vitest'
import { type BreedingRoom, openBreedingRoom } from './breeding-room.ts'

let room: BreedingRoom
let ids: Record<'Pair tank' | 'Empty tank' | 'Grow-out' | 'Empty grow-out' | 'Quarantine', string>

const water = { volumeL: 100, temperatureC: 26, salinity: 33 } as const

beforeAll(async () => {
  room = await openBreedingRoom({
    tanks: [
      { name: 'Pair tank', kind: 'broodstock', ...water, hasFilter: true },
      { name: 'Empty tank', kind: 'broodstock', ...water, hasFilter: true },
      { name: 'Grow-out', kind: 'grow_out', ...water },
      { name: 'Empty grow-out', kind: 'grow_out', ...water },
      { name: 'Quarantine', kind: 'quarantine', ...water, volumeL: 40 },
    ],
  })
  const params = { roomId: room.roomId }
  const tanks = await room.world.ok(room.owner, 'listTanks', { params })
  ids = Object.fromEntries(tanks.map(({ name, id }) => [name, id])) as typeof ids
  await room.world.ok(room.owner, 'createPair', {
    params,
    body: { name: 'Pair A', species: 'amphiprion-ocellaris', tankId: ids['Pair tank'] },
  })
})
afterAll(() => room.world.close())

const rulesAbout = async (subjectId: string) =>
  (await room.today()).tasks
    .filter(({ subject, state }) => subject.id === subjectId && state === 'open')
    .map(({ ruleId }) => ruleId)

test('empty tanks ask for nothing that needs fish; half of the water where no filter runs, a tenth where one does', async () => {
  const params = { roomId: room.roomId }
  await room.world.ok(room.owner, 'createJuvenileGroup', {
    params,
    body: { tankId: ids['Grow-out'], species: 'amphiprion-ocellaris', settledOn: '2026-02-20', number: 40 },
  })
  expect([await rulesAbout(ids['Empty tank']), await rulesAbout(ids['Empty grow-out'])]).toEqual([[], []])
  expect(await rulesAbout(ids.Quarantine)).toEqual(['quarantine-arrival'])
  const change = async (tankId: string) => (await room.tasks('tank-water-change', tankId))[0]?.amount
  expect(await change(ids['Pair tank'])).toEqual({ value: 10, unit: 'L' })
  expect(await change(ids['Grow-out'])).toEqual({ value: 50, unit: 'L' })
})

test('juveniles are fed three times in the light, and a length that is measured changes how much', async () => {
  const feeds = () => room.tasks('juvenile-feed')
  const before = await feeds()
  expect(before.map(({ roundId }) => roundId).sort()).toEqual(['evening', 'midday', 'morning'])
  await room.record({
    kind: 'count',
    subjectId: before[0]!.subject.id,
    data: { of: 'juveniles', animals: [40], lengthMm: 30 },
  })
  // 30 mm weigh 0.62 g: 40 fish at 9 % of it in two feeds are 1.1 g each.
  expect((await feeds()).map(({ amount }) => amount)).toEqual([1, 2].map(() => ({ value: 1.1, unit: 'g' })))
  expect((await room.tasks('juvenile-place')).length).toBe(1)
})

test('who died and what was skipped is told at the hand-over', async () => {
  const params = { roomId: room.roomId }
  const [feed] = await room.tasks('juvenile-feed')
  const subjectId = feed!.subject.id
  for (const number of [3, 4])
    await room.record({ kind: 'loss', subjectId, data: { number, of: 'juveniles', deformed: 1 } })
  await room.world.ok(room.owner, 'skipTask', { params: { ...params, taskId: feed!.id }, body: { reason: 'No time' } })
  const { losses, notDone } = await room.world.ok(room.owner, 'getHandOver', { params })
  expect(losses).toMatchObject([{ subject: { id: subjectId }, of: 'juveniles', care: null, number: 7 }])
  expect(notDone).toMatchObject([{ taskId: feed!.id, state: 'skipped', reason: 'No time' }])
})

test('nitrite at a tenth of what kills juveniles has half the water changed, and is tested in the next round', async () => {
  const subjectId = ids['Grow-out']
  await room.record({ kind: 'water_test', subjectId, data: { nitriteNMgPerL: 11 } })
  const [act] = await room.tasks('tank-water-act', subjectId)
  expect(act?.amount).toEqual({ value: 50, unit: 'L' })
  room.world.clock.advanceMinutes(30)
  await room.signOff(act!)
  expect(await room.tasks('tank-water-act', subjectId)).toEqual([])
  expect((await room.tasks('tank-water-test', subjectId)).map(({ roundId }) => roundId)).toEqual(['midday'])
})

test('fish that come into quarantine are brought over in three equal parts, and then watched', async () => {
  const subjectId = ids.Quarantine
  const [arrival] = await room.tasks('quarantine-arrival', subjectId)
  await room.signOff(arrival!, { number: 3, bagL: 3, bagSalinity: 35 })
  const [over] = await room.tasks('quarantine-acclimatise', subjectId)
  expect(over?.steps.flatMap(({ quantities }) => (quantities.each ? [quantities.each.value] : []))).toEqual([
    1.5, 1.5, 1.5,
  ])
  await room.signOff(over!)
  expect(await rulesAbout(subjectId)).toContain('quarantine-watch')
  expect(await rulesAbout(subjectId)).not.toContain('quarantine-acclimatise')
})

test('fish that stay in quarantine for months are looked after all the same', async () => {
  room.world.clock.advanceMinutes(75 * 24 * 60)
  expect(await rulesAbout(ids.Quarantine)).toContain('quarantine-watch')
  expect(await rulesAbout(ids.Quarantine)).not.toContain('quarantine-arrival')
})

test('tomorrow’s list is for reading: a task of it is refused today', async () => {
  const params = { roomId: room.roomId }
  const { tasks } = await room.world.ok(room.owner, 'getDay', { params: { ...params, date: 'tomorrow' } })
  const task = tasks.find(({ state }) => state === 'open')!
  const answer = await room.world.call(room.owner, 'signOffTask', {
    params: { ...params, taskId: task.id },
    body: { values: {} },
  })
  expect(answer.problem?.code).toBe('too_early')
})

test('what was skipped for a pair that is here no more is no longer told at the hand-over', async () => {
  const params = { roomId: room.roomId }
  const [feed] = await room.tasks('pair-feed')
  const taskParams = { params: { ...params, taskId: feed!.id }, body: { reason: 'No time' } }
  await room.world.ok(room.owner, 'skipTask', taskParams)
  const told = async () => {
    const { notDone } = await room.world.ok(room.owner, 'getHandOver', { params })
    return notDone.some(({ taskId }) => taskId === feed!.id)
  }
  expect(await told()).toBe(true)
  const [pair] = await room.world.ok(room.owner, 'listPairs', { params })
  const body = { version: pair!.version, reason: 'Given to a friend' }
  await room.world.ok(room.owner, 'endPair', { params: { ...params, pairId: pair!.id }, body })
  expect(await told()).toBe(false)
})
