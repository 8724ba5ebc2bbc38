import { describe, expect, test } from 'vitest'
import { minutesFrom, tasksOf } from './full-room.ts'
import { full, inOneRoom, make, newestAudit, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()

const dayBefore = () => minutesFrom(world, -1440).slice(0, 10)
const openTasksOf = async (id: string) =>
  (await tasksOf(world, full.owner, roomId)).filter((task) => task.subject.id === id && task.state === 'open')

const ends = [
  { word: 'tank', param: 'tankId', made: () => make.tank(), list: 'listTanks', end: 'endTank' },
  { word: 'culture', param: 'cultureId', made: () => make.culture(), list: 'listCultures', end: 'endCulture' },
  { word: 'pair', param: 'pairId', made: () => make.pair(), list: 'listPairs', end: 'endPair' },
  {
    word: 'larval_batch',
    param: 'batchId',
    made: () => make.batch({ hatchedOn: dayBefore() }),
    list: 'listLarvalBatches',
    end: 'endLarvalBatch',
  },
] as const
describe.each(ends)('a $word that is ended', ({ word, param, made, list, end }) => {
  test('says why, stays readable, has no open task left, and is ended once', async () => {
    const thing = await made()
    // A tank in which nobody lives asks for nothing; everything else has a task that its end withdraws.
    expect((await openTasksOf(thing.id)).length > 0).toBe(word !== 'tank')
    const body = { reason: 'no longer needed', version: thing.version }
    const request = { params: { roomId, [param]: thing.id }, body }
    expect((await send(world, full.standIn, end, request)).problem?.code).toBe('not_allowed')
    expect((await send(world, full.caretaker, end, { ...request, body: { ...body, reason: '' } })).problem?.code).toBe(
      'invalid_input',
    )
    const answer = await send(world, full.caretaker, end, request)
    expect(answer.json).toMatchObject({ id: thing.id, endedAt: world.clock.now(), version: thing.version + 1 })
    const listed: unknown = await world.ok(full.viewer, list, { params: { roomId } })
    expect(listed).toContainEqual(answer.json)
    expect(await newestAudit()).toMatchObject({
      action: `${word}.end`,
      subjectId: thing.id,
      detail: { reason: 'no longer needed' },
    })
    expect(await openTasksOf(thing.id)).toEqual([])
    const twice = await send(world, full.caretaker, end, { ...request, body: { ...body, version: thing.version + 1 } })
    expect(twice.problem?.code).toBe('wrong_state')
  })

  test('gives its name free', async () => {
    const thing = await made()
    const request = { params: { roomId, [param]: thing.id }, body: { reason: 'sold it', version: thing.version } }
    await send(world, full.caretaker, end, request)
    expect((await make.tank(thing.name)).name).toBe(thing.name)
  })
})
