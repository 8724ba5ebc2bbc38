import type { Clutch, LarvalBatch, NewFact } from '@fryward/shared'
import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()

const day = 1440
const params = () => ({ roomId })
const record = (body: NewFact) => world.ok(full.standIn, 'recordFact', { params: params(), body })
const lose = (subjectId: string, number: number, cause?: string) =>
  record({ kind: 'loss', subjectId, data: { number, of: 'larvae', ...(cause ? { cause } : {}) } })
const countHeads = (subjectId: string, of: 'larvae' | 'juveniles', heads: number) =>
  record({ kind: 'count', subjectId, data: { of, animals: [heads], dilution: 1 } })

type Raised = { clutch: Clutch; batch: LarvalBatch; groupId: string; endedOn: string }

/** A clutch lived through from its eggs: hatched, fed, counted, settled, placed; and both vessels ended. */
async function raise({ name, pairId = full.pair.id }: { name: string; pairId?: string }): Promise<Raised> {
  const clutch = await world.ok(full.standIn, 'createClutch', {
    params: params(),
    body: { pairId, name, spawnedAt: world.clock.now(), eggs: 100 },
  })
  world.clock.advanceMinutes(8 * day)
  const batch = await world.ok(full.standIn, 'createLarvalBatch', {
    params: params(),
    body: {
      ...{ tankId: full.larvalTank.id, clutchIds: [clutch.id], larvae: 80, name: make.called('Raised') },
      hatchedOn: minutesFrom(world, -day).slice(0, 10),
    },
  })
  world.clock.advanceMinutes(30)
  const amount = { amountMl: 200, animals: 40_000 }
  await record({
    kind: 'feeding',
    subjectId: batch.id,
    data: { food: 'rotifers', fromCultureId: full.culture.id, ...amount },
  })
  await record({ kind: 'water_test', subjectId: full.larvalTank.id, data: { temperatureC: 26.4 } })
  world.clock.advanceMinutes(5 * day)
  await lose(batch.id, 12, '=thin')
  await countHeads(batch.id, 'larvae', 60)
  world.clock.advanceMinutes(9 * day)
  await record({ kind: 'observation', subjectId: batch.id, data: { signs: ['settled'] } })
  world.clock.advanceMinutes(day)
  const group = await world.ok(full.standIn, 'createJuvenileGroup', {
    params: params(),
    body: {
      ...{ tankId: full.pairTank.id, fromBatchId: batch.id, number: 50 },
      ...{ settledOn: world.clock.now().slice(0, 10), name: make.called('Young') },
    },
  })
  const versionOf = async (id: string) =>
    (await world.database.prisma.subject.findUniqueOrThrow({ where: { roomId_id: { roomId, id } } })).version
  await world.ok(full.caretaker, 'endLarvalBatch', {
    params: { roomId, batchId: batch.id },
    body: { reason: 'all moved on', version: await versionOf(batch.id) },
  })
  world.clock.advanceMinutes(60 * day)
  await lose(group.id, 2)
  await record({ kind: 'outcome', subjectId: group.id, data: { outcome: 'placed', number: 48 } })
  await world.ok(full.caretaker, 'endJuvenileGroup', {
    params: { roomId, groupId: group.id },
    body: { reason: 'all placed', version: await versionOf(group.id) },
  })
  world.clock.advanceMinutes(1)
  return { clutch, batch, groupId: group.id, endedOn: world.clock.now().slice(0, 10) }
}

describe('the survival review', () => {
  let raised: Raised

  test('tells a clutch from its eggs to its placed young, though all of it has ended and left the window', async () => {
    raised = await raise({ name: '=1+1, "Amber" pair' })
    world.clock.advanceMinutes(100 * day)
    const { rows } = await world.ok(full.viewer, 'getSurvival', { params: params() })
    const row = rows.find(({ id }) => id === raised.clutch.id)!
    expect(row.stages.map(({ stage, status, atLeast, atMost }) => [stage, status, atLeast, atMost])).toEqual([
      ['laid', 'reached', 100, 100],
      ['hatched', 'reached', 80, 80],
      ['first_feed', 'reached', 80, 80],
      ['day_5', 'reached', 60, 60],
      ['metamorphosis', 'reached', 50, 60],
      ['settled', 'reached', 50, 50],
      ['placed', 'reached', 48, 48],
    ])
    expect(row).toMatchObject({
      pairs: [{ id: full.pair.id, kind: 'pair', name: 'Pair 1' }],
      tanks: [{ id: full.larvalTank.id }],
      cultures: [{ id: full.culture.id }],
      losses: [
        { cause: '=thin', number: 12 },
        { cause: null, number: 2 },
      ],
      // 80 less 12 seen dead is 68, and 60 were counted; 10 of those were not among the 50 that moved.
      missing: 18,
      numberNow: 0,
      mixedOn: null,
    })
  })

  test('is asked for by the dates on which eggs were laid', async () => {
    const laid = raised.clutch.spawnedAt.slice(0, 10)
    const rowsOf = async (query: Record<string, string>) =>
      (await world.ok(full.viewer, 'getSurvival', { params: params(), query })).rows.map(({ id }) => id)
    expect(await rowsOf({ from: laid, to: laid })).toEqual([raised.clutch.id])
    expect(await rowsOf({ from: raised.endedOn })).toEqual([])
    const answer = await world.call(full.viewer, 'getSurvival', {
      params: params(),
      query: { from: '2026-05-01', to: '2026-04-01' },
    })
    expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'querystring.to' }] })
  })

  test('follows what is struck out', async () => {
    const { facts } = await world.ok(full.owner, 'listFacts', {
      params: params(),
      query: { subjectId: raised.groupId, kind: 'loss' },
    })
    const reason = 'two were only hiding'
    await world.ok(full.owner, 'strikeFact', { params: { roomId, factId: facts[0]!.id }, body: { reason } })
    const { rows } = await world.ok(full.viewer, 'getSurvival', { params: params() })
    const row = rows.find(({ id }) => id === raised.clutch.id)!
    expect(row.losses).toEqual([{ cause: '=thin', number: 12 }])
    // Ended with two that nobody saw die.
    expect(row.missing).toBe(20)
  })

  test('goes into a spreadsheet as it is: no formula, a decimal mark as asked for', async () => {
    const file = async (query: Record<string, string>) =>
      send(world, full.viewer, 'downloadSurvival', { params: params(), query })
    const point = await file({})
    expect(point.contentType).toBe('text/csv')
    const [record] = (parse(point.text, { columns: true, bom: true }) as Record<string, string>[]).filter(
      ({ clutch }) => clutch?.includes('Amber'),
    )
    expect(record).toMatchObject({
      clutch: `'=1+1, "Amber" pair`,
      causes: `'=thin: 12`,
      hatched_at_least: '80',
      hatched_share: '0.8',
      hatched_share_of: 'laid',
      metamorphosis_at_least: '50',
      metamorphosis_at_most: '60',
      metamorphosis_share: '',
    })
    const comma = await file({ decimal: 'comma' })
    const rows = parse(comma.text, { columns: true, bom: true, delimiter: ';' }) as Record<string, string>[]
    expect(rows.find(({ clutch }) => clutch?.includes('Amber'))).toMatchObject({ hatched_share: '0,8' })
  })

  test('lays one clutch out on a line of time', async () => {
    const life = await world.ok(full.viewer, 'getClutchLife', { params: { roomId, clutchId: raised.clutch.id } })
    expect(life.meals).toMatchObject([{ food: 'rotifers', culture: { id: full.culture.id }, times: 1 }])
    expect(life.temperatures.map(({ temperatureC }) => temperatureC)).toEqual([26.4])
    expect(life.setPoints.map(({ tank }) => tank.name).sort()).toEqual(['Larval tank', 'Pair tank'])
    const on = (ageDays: number) => life.numbers.find((number) => number.ageDays === ageDays)
    expect([on(0), on(3), on(5)]).toMatchObject([
      { atLeast: 80, atMost: 80, isCounted: true },
      { atLeast: 72, atMost: 80, isCounted: false },
      { atLeast: 60, atMost: 60, isCounted: true },
    ])
    // It ends on the day on which the last were placed.
    expect(life.numbers.at(-1)).toMatchObject({ atMost: 0, ageDays: 75 })
    expect(life.departures.map(({ kind, number, ageDays }) => [kind, number, ageDays])).toEqual([
      ['loss', 12, 5],
      ['placed', 48, 75],
    ])
    const turned = life.expected.find(({ stage }) => stage === 'metamorphosis')!
    expect(turned.from > life.row.bornOn! && turned.from < turned.to).toBe(true)
    expect(new Set(life.events.map(({ kind }) => kind))).toEqual(
      new Set(['spawning', 'hatch', 'loss', 'count', 'observation', 'transfer', 'outcome']),
    )
    const unknown = await world.call(full.viewer, 'getClutchLife', { params: { roomId, clutchId: full.pair.id } })
    expect(unknown.status).toBe(404)
  })

  test('puts two pairs side by side, and says that two clutches are too few to tell them apart', async () => {
    const other = await make.pair()
    const second = await raise({ name: 'Other pair, first', pairId: other.id })
    const compared = await world.ok(full.viewer, 'compareSurvival', { params: params(), query: { by: 'pair' } })
    expect(compared.conclusion).toBe('too_few_clutches')
    const groups = compared.groups.filter(({ key }) => [full.pair.id, other.id].includes(key))
    expect(groups.map(({ name }) => name).sort()).toEqual([other.name, 'Pair 1'].sort())
    const group = groups.find(({ key }) => key === other.id)!
    // 12 seen and 8 missing by day 5, 10 more missing by day 15, 2 dead on day 75.
    expect(group).toMatchObject({ clutches: 1, animals: 80, deaths: 32 })
    expect(group.curve.at(-1)!.share).toBeCloseTo(48 / 80, 10)
    expect(compared.byClutch?.smallestPValue).toBe(1)
    const { rows } = await world.ok(full.viewer, 'getSurvival', { params: params() })
    expect(rows[0]!.id).toBe(second.clutch.id)
    for (const by of ['culture', 'tank', 'protocol', 'green_water', 'artemia_day', 'species', 'season'] as const) {
      const answer = await world.ok(full.viewer, 'compareSurvival', { params: params(), query: { by } })
      expect(answer.groups.reduce((sum, { clutches }) => sum + clutches, 0)).toBeGreaterThan(0)
    }
  })

  test('keeps the tank that larvae spent their first days in, wherever they are moved then', async () => {
    const clutch = await world.ok(full.standIn, 'createClutch', {
      params: params(),
      body: { pairId: full.pair.id, name: make.called('Housed'), spawnedAt: world.clock.now(), eggs: 100 },
    })
    world.clock.advanceMinutes(8 * day)
    const batch = await world.ok(full.standIn, 'createLarvalBatch', {
      params: params(),
      body: {
        ...{ tankId: full.larvalTank.id, clutchIds: [clutch.id], larvae: 60, name: make.called('Housed') },
        hatchedOn: minutesFrom(world, -day).slice(0, 10),
      },
    })
    world.clock.advanceMinutes(10 * day)
    const body = { tankId: full.pairTank.id, version: batch.version }
    await world.ok(full.caretaker, 'changeLarvalBatch', { params: { roomId, batchId: batch.id }, body })
    const { rows } = await world.ok(full.viewer, 'getSurvival', { params: params() })
    expect(rows.find(({ id }) => id === clutch.id)).toMatchObject({ tanks: [{ id: full.larvalTank.id }], protocol: [] })
    const life = await world.ok(full.viewer, 'getClutchLife', { params: { roomId, clutchId: clutch.id } })
    expect(life.setPoints.map(({ tank }) => tank.name).sort()).toEqual(['Larval tank', 'Pair tank'])
  })
})

describe('descent', () => {
  const pair = (name: string, from: object = {}) =>
    world.call(full.caretaker, 'createPair', {
      params: params(),
      body: { name, species: 'amphiprion-ocellaris', tankId: full.pairTank.id, ...from },
    })
  const laidBy = (pairId: string) =>
    world.ok(full.standIn, 'createClutch', {
      params: params(),
      body: { pairId, name: make.called('Line'), spawnedAt: world.clock.now(), eggs: 90 },
    })

  test('of brother and sister is known before they become a pair, and their young are a quarter inbred', async () => {
    const founders = (await pair('Founders')).body
    const clutch = await laidBy(founders.id)
    const toBe = await world.ok(full.viewer, 'getPairToBe', {
      params: params(),
      query: { femaleFromClutchId: clutch.id, maleFromClutchId: clutch.id },
    })
    expect(toBe).toEqual({ relationship: 0.5, offspringInbreeding: 0.25, hasUnknownParent: false })
    const young = (await pair('Young', { femaleFromClutchId: clutch.id, maleFromClutchId: clutch.id })).body
    expect(young).toMatchObject({ femaleFromClutchId: clutch.id, maleFromClutchId: clutch.id })
    const { fish, pairs, bySpecies } = await world.ok(full.viewer, 'getPedigree', { params: params() })
    expect(pairs.find(({ pair: { id } }) => id === young.id)).toMatchObject({
      generation: 1,
      offspringInbreeding: 0.25,
    })
    expect(fish.filter(({ pair: { id } }) => id === young.id)).toMatchObject([
      { sex: 'female', generation: 1, parents: { id: founders.id }, inbreeding: 0 },
      { sex: 'male', generation: 1, parents: { id: founders.id }, inbreeding: 0 },
    ])
    const living = (await world.ok(full.viewer, 'listPairs', { params: params() })).length
    expect(bySpecies).toMatchObject([{ males: living, effectiveSize: 2 * living, founders: 2 * living - 2 }])
    // With her own father: relationship a half, as every textbook has it.
    const withFather = await world.ok(full.viewer, 'getPairToBe', {
      params: params(),
      query: { femaleOfPairId: young.id, maleOfPairId: founders.id },
    })
    expect(withFather.offspringInbreeding).toBe(0.25)
    const withStranger = await world.ok(full.viewer, 'getPairToBe', {
      params: params(),
      query: { femaleOfPairId: young.id },
    })
    expect(withStranger).toMatchObject({ offspringInbreeding: 0, hasUnknownParent: true })
  })

  test('counts a fish that spawns in two pairs once, as a clownfish that lost its mate and changed sex', async () => {
    const before = await world.ok(full.viewer, 'getPedigree', { params: params() })
    const widowed = (await pair('Widowed')).body
    const clutch = await laidBy(widowed.id)
    const again = (await pair('Again', { femaleSameAs: { pairId: widowed.id, sex: 'male' } })).body
    expect(again).toMatchObject({ femaleSameAs: { pairId: widowed.id, sex: 'male' }, femaleFromClutchId: null })
    const { fish, bySpecies } = await world.ok(full.viewer, 'getPedigree', { params: params() })
    expect(fish.find(({ pair: { id }, sex }) => id === again.id && sex === 'female')).toMatchObject({
      sameAs: { pair: { id: widowed.id }, sex: 'male' },
      fromClutch: null,
    })
    // Three founders more in two pairs.
    expect(bySpecies[0]!.founders).toBe(before.bySpecies[0]!.founders + 3)
    const second = (await pair('Second', { femaleSameAs: { pairId: widowed.id, sex: 'female' } })).body
    const { males, females, effectiveSize } = (await world.ok(full.viewer, 'getPedigree', { params: params() }))
      .bySpecies[0]!
    // Three pairs more, with three males and two females: the one of them that has two of them is one.
    expect([males, females]).toEqual([before.bySpecies[0]!.males + 3, before.bySpecies[0]!.females + 2])
    expect(effectiveSize).toBeCloseTo((4 * males * females) / (males + females), 9)
    // Half brother and sister by her who is in both, and her own young, by whichever pair one asks.
    const other = await laidBy(second.id)
    const halves = { femaleFromClutchId: clutch.id, maleFromClutchId: other.id }
    const toBe = (query: Record<string, string>) => world.ok(full.viewer, 'getPairToBe', { params: params(), query })
    expect(await toBe(halves)).toMatchObject({ relationship: 0.25, offspringInbreeding: 0.125 })
    expect(await toBe({ femaleOfPairId: second.id, maleFromClutchId: clutch.id })).toMatchObject({
      offspringInbreeding: 0.25,
    })
    const self = await world.call(full.viewer, 'getPairToBe', {
      params: params(),
      query: { femaleOfPairId: again.id, maleOfPairId: widowed.id },
    })
    expect(self.problem?.detail).toContain('one and the same fish')
    const change = (body: Record<string, unknown>) =>
      world.call(full.caretaker, 'changePair', {
        params: { roomId, pairId: widowed.id },
        body: { ...body, version: widowed.version },
      })
    expect((await change({ maleSameAs: { pairId: again.id, sex: 'female' } })).problem?.detail).toContain(
      'own ancestor',
    )
    expect((await change({ maleSameAs: { pairId: widowed.id, sex: 'female' } })).problem?.detail).toContain('very pair')
    const both = { femaleSameAs: { pairId: second.id, sex: 'male' }, femaleFromClutchId: other.id }
    expect((await change(both)).problem?.detail).toContain('not both')
  })

  test('is refused where it cannot be: its own ancestor, another species, together before the eggs', async () => {
    const [old] = (await world.ok(full.viewer, 'listPairs', { params: params() })).filter(
      ({ name }) => name === 'Young',
    )
    const grandchild = await laidBy(old!.id)
    const founders = (await world.ok(full.viewer, 'listPairs', { params: params() })).find(
      ({ name }) => name === 'Founders',
    )!
    const loop = await world.call(full.caretaker, 'changePair', {
      params: { roomId, pairId: founders.id },
      body: { maleFromClutchId: grandchild.id, version: founders.version },
    })
    expect(loop.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'maleFromClutchId' }] })
    expect(loop.problem?.detail).toContain('no fish is its own ancestor')
    const other = await pair('Others', { species: 'amphiprion-percula', femaleFromClutchId: grandchild.id })
    expect(other.problem?.detail).toContain('another species')
    const early = await pair('Early', { formedOn: '2026-01-01', femaleFromClutchId: grandchild.id })
    expect(early.problem?.detail).toContain('was together before')
    // Said of the date alone it is the same: its fish are of a clutch that came later.
    const dated = await world.call(full.caretaker, 'changePair', {
      params: { roomId, pairId: old!.id },
      body: { formedOn: '2026-01-01', version: old!.version },
    })
    expect(dated.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'femaleFromClutchId' }] })
    const changed = await world.ok(full.caretaker, 'changePair', {
      params: { roomId, pairId: old!.id },
      body: { femaleFromClutchId: null, version: old!.version },
    })
    expect(changed).toMatchObject({ femaleFromClutchId: null, maleFromClutchId: old!.maleFromClutchId })
  })

  test('is held against the day of the room on which the eggs were laid', async () => {
    world.clock.set('2027-07-02T08:00:00.000Z')
    // Half past midnight in the room: by UTC it is the day before.
    const clutch = await world.ok(full.standIn, 'createClutch', {
      params: params(),
      body: { pairId: full.pair.id, name: make.called('Night'), spawnedAt: '2027-07-01T23:30:00.000Z', eggs: 90 },
    })
    const formed = (formedOn: string) => pair(make.called('Of it'), { formedOn, maleFromClutchId: clutch.id })
    expect((await formed('2027-07-01')).problem?.fields).toMatchObject([{ path: 'maleFromClutchId' }])
    expect((await formed('2027-07-02')).status).toBe(201)
  })
})

test('young that a parent carried are known as such wherever they are reviewed', async () => {
  const pair = await world.ok(full.caretaker, 'createPair', {
    params: params(),
    body: { name: make.called('Silver'), species: 'pterapogon-kauderni', tankId: full.pairTank.id },
  })
  const { clutch, batch } = await raise({ name: make.called('Brood'), pairId: pair.id })
  const { rows } = await world.ok(full.viewer, 'getSurvival', { params: params() })
  expect(rows.find(({ id }) => id === clutch.id)?.care).toBe('mouth')
  expect(rows.filter(({ species }) => species === 'amphiprion-ocellaris').map(({ care }) => care)).toContain('nest')
  const life = await world.ok(full.viewer, 'getClutchLife', { params: { roomId, clutchId: clutch.id } })
  expect(life.row.care).toBe('mouth')
  expect(batch.care).toBe('mouth')
  const { cares } = await world.ok(full.viewer, 'compareSurvival', { params: params(), query: { by: 'pair' } })
  expect(cares).toEqual(['nest', 'mouth'])
})
