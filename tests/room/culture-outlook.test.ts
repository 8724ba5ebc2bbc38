import { getCultureOutlook, RoomError } from '@fryward/room'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openRoom, openWorld, type World } from '../support/world.ts'

let world: World
let full: FullRoom

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
})
afterAll(() => world.close())

const outlook = (query: { harvestShare?: number; days?: number } = {}, cultureId = full.culture.id) =>
  getCultureOutlook({
    ctx: world.contextOf(full.viewer),
    roomId: full.roomId,
    cultureId,
    query: { days: 5, ...query },
  })

const count = (subjectId: string, animals: number) =>
  world.ok(full.owner, 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'count', subjectId, data: { of: 'culture', animals: [animals], volumeMl: 1 } },
  })

test('a culture that was counted less than twice says what is missing', async () => {
  const young = await world.ok(full.owner, 'createCulture', {
    params: { roomId: full.roomId },
    body: { name: 'Young', kind: 'rotifer', strain: 'L', volumeL: 16, temperatureC: 25, salinity: 20 },
  })
  const answer = await outlook({}, young.id)
  expect(answer).toMatchObject({ counts: [], behind: [], ahead: [], growthPerDay: null, sustainableSharePerDay: null })
  expect(answer.sentence).toContain('Count it twice')
})

test('every count is there with its interval, the newest last', async () => {
  const { counts } = await outlook()
  expect(counts.map((count) => count.densityPerMl)).toEqual([63, 87])
  for (const count of counts) {
    expect(count.lowerPerMl).toBeLessThan(count.densityPerMl)
    expect(count.upperPerMl).toBeGreaterThan(count.densityPerMl)
    expect(count.eggRatio).toBeCloseTo(0.3, 6)
  }
  expect(counts.map((count) => count.at)).toEqual([...counts.map((count) => count.at)].sort())
})

test('the days ahead begin now, follow one another and are bands in order', async () => {
  const { ahead } = await outlook({ days: 5 })
  expect(ahead).toHaveLength(6)
  expect(Math.abs(Date.parse(ahead[0]!.at) - Date.parse(world.clock.now()))).toBeLessThan(60_000)
  for (const [index, day] of ahead.entries()) {
    const before = ahead[index - 1]
    if (before) expect(Date.parse(day.at) - Date.parse(before.at)).toBe(86_400_000)
    const band = [day.p10, day.p25, day.p50, day.p75, day.p90]
    expect(band).toEqual([...band].sort((a, b) => a - b))
    expect(day.p10).toBeGreaterThanOrEqual(0)
  }
})

test('the same question gives the same picture', async () => {
  expect(await outlook({ harvestShare: 0.2 })).toEqual(await outlook({ harvestShare: 0.2 }))
})

test('who takes more has less left, and is told when it is too much', async () => {
  const last = async (harvestShare: number) => (await outlook({ harvestShare })).ahead.at(-1)!.p50
  const [none, fifth, most] = [await last(0), await last(0.2), await last(0.8)]
  expect(none).toBeGreaterThan(fifth)
  expect(fifth).toBeGreaterThan(most)
  const greedy = await outlook({ harvestShare: 0.9 })
  expect(greedy.harvestSharePerDay).toBe(0.9)
  expect(greedy.sentence).toContain('thins it out')
})

test('what the list advises for today is what the page says, told apart from what it gives each day', async () => {
  const dense = await world.ok(full.owner, 'createCulture', {
    params: { roomId: full.roomId },
    body: { name: 'Dense', kind: 'rotifer', strain: 'L', volumeL: 16, temperatureC: 25, salinity: 20 },
  })
  const startedMs = Date.parse(world.clock.now())
  for (const [day, animals] of [150, 230, 290, 320, 330, 325, 330].entries()) {
    world.clock.set(new Date(startedMs + day * 86_400_000 + 3_600_000).toISOString())
    await count(dense.id, animals)
  }
  const advised = await outlook({}, dense.id)
  const percent = (share: number | null) => Math.round((share ?? Number.NaN) * 100)
  const [today, eachDay] = [percent(advised.harvestSharePerDay), percent(advised.sustainableSharePerDay)]
  expect(today).toBeGreaterThan(eachDay)
  expect(advised.sentence).toContain(
    `It can give ${today}% today; day after day ${eachDay}% keeps it where it gives most.`,
  )
  const { tasks } = await world.ok(full.owner, 'getDay', { params: { roomId: full.roomId, date: 'today' } })
  const thinning = tasks.find(({ subject, verb }) => subject.id === dense.id && verb === 'harvest')
  expect(thinning?.amount).toEqual({
    value: Number((advised.harvestSharePerDay * dense.volumeL).toFixed(6)),
    unit: 'L',
  })
  world.clock.set(new Date(startedMs).toISOString())
})

test('a count that was struck out is gone from the picture', async () => {
  const before = await outlook()
  const body = {
    kind: 'count' as const,
    subjectId: full.culture.id,
    data: { of: 'culture' as const, animals: [500], volumeMl: 1 },
  }
  const wrong = await world.ok(full.owner, 'recordFact', { params: { roomId: full.roomId }, body })
  expect((await outlook()).counts).toHaveLength(3)
  await world.ok(full.owner, 'strikeFact', {
    params: { roomId: full.roomId, factId: wrong.id },
    body: { reason: 'the wrong culture' },
  })
  expect(await outlook()).toEqual(before)
})

test("a culture that is no rotifer has its counts and no forecast by a rotifer's rates", async () => {
  const { id } = await world.ok(full.owner, 'createCulture', {
    params: { roomId: full.roomId },
    body: { name: 'Tisbe', kind: 'copepod', volumeL: 10, temperatureC: 25, salinity: 30 },
  })
  for (const animals of [2, 3]) await count(id, animals)
  const answer = await outlook({}, id)
  expect(answer.counts.map(({ densityPerMl }) => densityPerMl)).toEqual([2, 3])
  expect(answer).toMatchObject({ behind: [], ahead: [], growthPerDay: null })
  expect(answer.sentence).toContain('known of rotifers only')
})

describe('a culture that has ended', () => {
  const end = async (id: string, reason: string) => {
    const cultures = await world.ok(full.owner, 'listCultures', { params: { roomId: full.roomId } })
    const { version } = cultures.find((each) => each.id === id)!
    return world.ok(full.owner, 'endCulture', {
      params: { roomId: full.roomId, cultureId: id },
      body: { reason, version },
    })
  }
  const start = async (name: string) =>
    world.ok(full.owner, 'createCulture', {
      params: { roomId: full.roomId },
      body: { name, kind: 'rotifer', strain: 'L', volumeL: 16, temperatureC: 25, salinity: 20 },
    })

  test('keeps its counts, harvests and estimate until its end, and has nothing ahead', async () => {
    const { id } = await start('Short-lived')
    for (const animals of [60, 80, 100]) {
      await count(id, animals)
      world.clock.advanceMinutes(1440)
    }
    await world.ok(full.owner, 'recordFact', {
      params: { roomId: full.roomId },
      body: { kind: 'harvest', subjectId: id, data: { volumeL: 4, parts: [{ to: 'drain', volumeL: 4 }] } },
    })
    world.clock.advanceMinutes(60)
    const { endedAt } = await end(id, 'crashed overnight')
    const answer = await outlook({ harvestShare: 0.5 }, id)
    expect(answer.counts.map(({ densityPerMl }) => densityPerMl)).toEqual([60, 80, 100])
    expect(answer.harvests).toMatchObject([{ volumeL: 4, share: 0.25 }])
    expect(answer).toMatchObject({ ahead: [], harvestSharePerDay: 0, sustainableSharePerDay: null })
    const { at, p10, p50, p90 } = answer.behind.at(-1)!
    expect(at).toBe(endedAt)
    expect(p10 < p50 && p50 < p90).toBe(true)
    expect(answer.behind.map((band) => band.at)).toEqual(answer.behind.map((band) => band.at).sort())
    expect(answer.sentence).toMatch(/^Ended on \d+ Mar: crashed overnight\. It stood at about \d+ per mL then\.$/)
    expect(answer.sentence).toContain(`about ${Math.round(p50)} per mL`)
  })

  test('is the same picture however long ago that was', async () => {
    const { id } = await start('Long gone')
    for (const animals of [60, 80]) {
      await count(id, animals)
      world.clock.advanceMinutes(1440)
    }
    await end(id, 'given up')
    const then = await outlook({}, id)
    world.clock.advanceMinutes(100 * 1440)
    expect(await outlook({}, id)).toEqual(then)
  })

  test('that was never counted twice says only when and why', async () => {
    const { id } = await start('Never counted')
    await end(id, 'spilled.')
    expect(await outlook({}, id)).toMatchObject({
      ...{ counts: [], harvests: [], behind: [], ahead: [], growthPerDay: null },
      sentence: expect.stringMatching(/^Ended on \d+ \w+: spilled\.$/),
    })
  })
})

test("another room's culture is not found", async () => {
  const other = await openRoom(world, { name: 'Next door' })
  const ask = getCultureOutlook({
    ctx: world.contextOf(other.owner),
    roomId: other.room.id,
    cultureId: full.culture.id,
    query: { days: 5 },
  })
  await expect(ask).rejects.toThrow(RoomError)
  await expect(ask).rejects.toMatchObject({ code: 'not_found' })
})
