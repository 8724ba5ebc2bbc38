import type { RouteId } from '@fryward/shared'
import { beforeAll, describe, expect, test } from 'vitest'
import { openRoom, type Person } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, newestAudit, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()
let neighbour: { owner: Person; roomId: string }
beforeAll(async () => {
  const opened = await openRoom(world, { name: 'Next door' })
  neighbour = { owner: opened.owner, roomId: opened.room.id }
})

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
    expect(await newestAudit()).toMatchObject({ action: `${thing.word}.create` })
    const listed: unknown = await world.ok(full.viewer, thing.list, { params: { roomId } })
    expect(listed).toContainEqual(made)
  })

  test('is changed from the version that was seen, and says who changed it', async () => {
    const made = await thing.made()
    const request = { params: { roomId, [thing.param]: made.id }, body: { ...setOf(thing), version: made.version } }
    const answer = await send(world, full.caretaker, thing.change, request)
    expect(answer.status, answer.text).toBe(200)
    expect(answer.json).toMatchObject({ ...setOf(thing), id: made.id, version: made.version + 1 })
    expect(await newestAudit()).toMatchObject({ actor: { userId: full.caretaker.userId } })
    expect((await newestAudit()).action).toMatch(new RegExp(`^${thing.word}\\.(change|end)$`))
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

test('what is known of a species without a profile is said anew for all of its kind, by an owner, and its tasks follow', async () => {
  const params = { roomId, species: 'other-x-synchiropus-splendidus' }
  const tank = await make.tank()
  const body = { name: make.called('Mandarins'), species: params.species, tankId: tank.id }
  const pair = await world.ok(full.owner, 'createPair', { params, body })
  const clutch = await world.ok(full.owner, 'createClutch', {
    params,
    body: { name: make.called('M'), pairId: pair.id, spawnedAt: minutesFrom(world, -36 * 60), eggs: 200 },
  })
  const lookFields = async () => {
    const { tasks } = await world.ok(full.owner, 'getDay', { params: { roomId, date: 'today' } })
    const look = tasks.find(
      ({ ruleId, subject, state }) => ruleId === 'clutch-look' && subject.id === clutch.id && state === 'open',
    )
    return look?.fields.map(({ name }) => name)
  }
  expect(await lookFields()).toContain('eggStage')

  const said = { name: 'Synchiropus picturatus', eggDays: 4, care: 'pelagic' } as const
  expect((await world.call(full.caretaker, 'changeOtherSpecies', { params, body: said })).problem?.code).toBe(
    'not_allowed',
  )
  const greek = await world.call(full.owner, 'changeOtherSpecies', { params, body: { ...said, name: 'Γραμμα' } })
  expect(greek.problem?.fields?.[0]?.message).toMatch(/letters from a to z/)
  const { species } = await world.ok(full.owner, 'changeOtherSpecies', { params, body: said })
  expect(species).toBe('other-4f-synchiropus-picturatus')
  expect(await newestAudit()).toMatchObject({ action: 'species.change', detail: { before: params.species, species } })
  const clutches = await world.ok(full.owner, 'listClutches', { params })
  expect(clutches.find(({ id }) => id === clutch.id)).toMatchObject({ species, care: 'pelagic' })
  expect(await lookFields()).toEqual(['eggs', 'dead', 'note'])
  // Nothing of that name is left, and one with a profile is not for a room to say.
  for (const gone of [params.species, 'amphiprion-ocellaris'])
    expect(
      (await world.call(full.owner, 'changeOtherSpecies', { params: { roomId, species: gone }, body: said })).status,
    ).toBe(404)
})
