import type { RouteId } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { type Makers, makersIn } from './makers.ts'
import { send } from './send.ts'

let world: World
let full: FullRoom
let roomId: string
let make: Makers
let neighbour: { owner: Person; roomId: string }

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  roomId = full.roomId
  make = makersIn(world, full)
  const opened = await openRoom(world, { name: 'Next door' })
  neighbour = { owner: opened.owner, roomId: opened.room.id }
})
afterAll(() => world.close())
beforeEach(() => world.clock.advanceMinutes(1))

const newest = async () =>
  (await world.ok(full.owner, 'listAudit', { params: { roomId }, query: { limit: 1 } })).entries[0]!

/** How each thing is made, changed and ended; what a change sets and the word its audit rows begin with. */
const things = [
  {
    word: 'tank',
    param: 'tankId',
    made: () => make.tank(),
    list: 'listTanks',
    change: 'changeTank',
    set: { volumeL: 61 },
  },
  {
    word: 'culture',
    param: 'cultureId',
    made: () => make.culture(),
    list: 'listCultures',
    change: 'changeCulture',
    set: { volumeL: 17 },
  },
  {
    word: 'pair',
    param: 'pairId',
    made: () => make.pair(),
    list: 'listPairs',
    change: 'changePair',
    set: { isResting: true },
  },
  {
    word: 'clutch',
    param: 'clutchId',
    made: () => make.clutch(),
    list: 'listClutches',
    change: 'changeClutch',
    set: { intent: 'raise_part' },
  },
  {
    ...{ word: 'larval_batch', param: 'batchId', made: () => make.batch(), list: 'listLarvalBatches' },
    ...{ change: 'changeLarvalBatch', set: { note: 'a little pale' } },
  },
  {
    ...{ word: 'concentrate', param: 'concentrateId', made: () => make.concentrate(), list: 'listConcentrates' },
    ...{ change: 'changeConcentrate', set: { isFinished: true } },
  },
  {
    word: 'feed_link',
    param: 'feedLinkId',
    made: () => make.feedLink(),
    list: 'listFeedLinks',
    change: 'endFeedLink',
    set: {},
  },
] as const satisfies { list: RouteId; change: RouteId; [key: string]: unknown }[]
const setOf = (thing: (typeof things)[number]) => (thing.word === 'feed_link' ? { untilOn: make.today() } : thing.set)

describe.each(things)('a $word', (thing) => {
  test('is made, listed and written into the audit log', async () => {
    const made = await thing.made()
    expect(await newest()).toMatchObject({ action: `${thing.word}.create` })
    const listed: unknown = await world.ok(full.viewer, thing.list, { params: { roomId } })
    expect(listed).toContainEqual(made)
  })

  test('is changed from the version that was seen, and says who changed it', async () => {
    const made = await thing.made()
    const request = { params: { roomId, [thing.param]: made.id }, body: { ...setOf(thing), version: made.version } }
    const answer = await send(world, full.caretaker, thing.change, request)
    expect(answer.status, answer.text).toBe(200)
    expect(answer.json).toMatchObject({ ...setOf(thing), id: made.id, version: made.version + 1 })
    expect(await newest()).toMatchObject({ actor: { userId: full.caretaker.userId } })
    expect((await newest()).action).toMatch(new RegExp(`^${thing.word}\\.(change|end)$`))
  })

  test('that somebody changed meanwhile is not overwritten: 409 says what it is now', async () => {
    const made = await thing.made()
    const request = { params: { roomId, [thing.param]: made.id }, body: { ...setOf(thing), version: made.version } }
    await send(world, full.caretaker, thing.change, request)
    const before = await fingerprintOf(world, roomId)
    const answer = await send(world, full.owner, thing.change, request)
    expect([answer.status, answer.problem?.code]).toEqual([409, 'stale_version'])
    expect(answer.problem?.current).toMatchObject({ id: made.id, version: made.version + 1, ...setOf(thing) })
    expect(await fingerprintOf(world, roomId)).toEqual(before)
  })

  test('that two people change at the same instant takes one of the changes', async () => {
    const made = await thing.made()
    const request = { params: { roomId, [thing.param]: made.id }, body: { ...setOf(thing), version: made.version } }
    const answers = await Promise.all(
      [full.owner, full.caretaker].map((person) => send(world, person, thing.change, request)),
    )
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409])
  })

  test('is not found from another room', async () => {
    const made = await thing.made()
    const answer = await send(world, neighbour.owner, thing.change, {
      params: { roomId: neighbour.roomId, [thing.param]: made.id },
      body: { ...setOf(thing), version: made.version },
    })
    expect(answer.problem?.code).toBe('not_found')
  })
})
