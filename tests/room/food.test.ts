import { askWhatIf, getDay, getFood, getTaskWhy, planRoomFood, thinkHere } from '@fryward/room'
import type { FoodChange, FoodOutlook } from '@fryward/shared'
import { inSnapshot, readEndedBatches } from '@fryward/store'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type FullRoom, openFullRoom } from '../api/full-room.ts'
import { openWorld, type World } from '../support/world.ts'

let world: World
let full: FullRoom
beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
})
afterAll(() => world.close())

const asViewer = () => ({ ctx: world.contextOf(full.viewer), roomId: full.roomId })
const clock = () => ({
  database: world.database,
  actor: { kind: 'system', job: 'food' } as const,
  now: world.clock.now(),
})
const planAgain = () => planRoomFood({ ctx: clock(), roomId: full.roomId, thinker: thinkHere })
const planned = async () => {
  const { plan } = await getFood(asViewer())
  if (!plan) throw new Error('There is no plan')
  return plan
}
const whatIf = (...changes: FoodChange[]) =>
  askWhatIf({ ctx: world.contextOf(full.standIn), roomId: full.roomId, input: { changes }, thinker: thinkHere })
/** A day's number as the wire rounds it: three digits. */
const about = (value: number) => value * 1.01

describe('the food of a room', () => {
  test('has no plan until one is made, and then one for its revision', async () => {
    expect(await getFood(asViewer())).toEqual({ plan: null, underWay: [] })
    expect(await planAgain()).toBe('planned')
    const plan = await planned()
    expect(plan).toMatchObject({ madeAt: world.clock.now(), isStale: false })
    expect(plan.outlook.days).toHaveLength(21)
    expect(plan.outlook.days[0]!.date).toBe(world.clock.now().slice(0, 10))
    expect(plan.outlook.eaters.map(({ kind, subjectId }) => [kind, subjectId])).toEqual(
      expect.arrayContaining([
        ['larval_batch', full.batch.id],
        ['clutch', full.clutch.id],
        ['spawning', full.pair.id],
      ]),
    )
  })

  test('takes no more than half of a culture, and accounts for what each batch gets', async () => {
    const { days, cultures } = (await planned()).outlook
    for (const day of days) {
      for (const [index, { id, fedL, spareL }] of day.cultures.entries()) {
        const given = day.gives.filter(({ cultureId }) => cultureId === id)
        const litres = given.reduce((sum, { volumeL }) => sum + volumeL, 0)
        expect(litres).toBeLessThanOrEqual(about(fedL) + 0.01)
        expect(fedL + spareL).toBeLessThanOrEqual(about(cultures[index]!.volumeL / 2))
      }
      for (const { id, wanted, got } of day.eaters) {
        const animals = day.gives.filter(({ eaterId }) => eaterId === id).reduce((sum, give) => sum + give.animals, 0)
        expect(Math.abs(animals - got)).toBeLessThanOrEqual(0.02 * wanted + 500)
        expect(got).toBeLessThanOrEqual(about(wanted))
      }
    }
  })

  test('is old when something has changed, and good again where that changed nothing it reads', async () => {
    const params = { roomId: full.roomId }
    await world.ok(full.owner, 'writeNote', { params, body: { text: 'the heater hums' } })
    expect((await planned()).isStale).toBe(true)
    const { madeAt } = await planned()
    world.clock.advanceMinutes(1)
    expect(await planAgain()).toBe('still-good')
    expect(await planned()).toMatchObject({ isStale: false, madeAt })
    const data = { of: 'culture' as const, animals: [200, 205], volumeMl: 1 }
    await world.ok(full.owner, 'recordFact', { params, body: { kind: 'count', subjectId: full.culture.id, data } })
    const before = (await planned()).outlook
    expect(await planAgain()).toBe('planned')
    const after = await planned()
    expect(after).toMatchObject({ isStale: false, madeAt: world.clock.now() })
    expect(after.outlook.days[0]!.cultures[0]!.densityPerMl).not.toBe(before.days[0]!.cultures[0]!.densityPerMl)
  })

  test('counts on what a cone that was started will give', async () => {
    const params = { roomId: full.roomId }
    const body = { name: 'Cone 1', kind: 'artemia_hatch' as const, volumeL: 2, temperatureC: 27, salinity: 30 }
    const cone = await world.ok(full.owner, 'createCulture', { params, body })
    await planAgain()
    expect((await planned()).outlook.hatches).toEqual([])
    const data = { act: 'start_artemia' as const, litres: 2, cystsG: 1 }
    await world.ok(full.owner, 'recordFact', { params, body: { kind: 'care', subjectId: cone.id, data } })
    expect(await planAgain()).toBe('planned')
    const { hatches = [] } = (await planned()).outlook
    expect(hatches).toMatchObject([{ cultureId: cone.id, name: 'Cone 1', standing: 'under_way' }])
    // 200,000-300,000 nauplii of a gram of good cysts: Treece 2000, SRAC Publication 702; some are lost in the sieve.
    expect(hatches[0]!.nauplii).toBeGreaterThan(100_000)
    expect(hatches[0]!.nauplii).toBeLessThan(300_000)
  })

  test('shows only cures that help, each as it was tried', async () => {
    const { outlook, cures } = await planned()
    expect(outlook.worry).not.toBeNull()
    expect(cures.map(({ change }) => change.kind)).toContain('buy_in')
    for (const cure of cures) {
      const { after } = await whatIf(cure.change)
      expect({ worry: cure.worry, shortTotal: cure.shortTotal }).toEqual({
        worry: after.worry,
        shortTotal: after.shortTotal,
      })
      const isLater = cure.worry === null || cure.worry.date > outlook.worry!.date
      expect(isLater || cure.shortTotal < 0.9 * outlook.shortTotal).toBe(true)
    }
  })

  test('is asked what if: a crash feeds nobody, another clutch wants more', async () => {
    const sumOf = (outlook: FoodOutlook, part: 'wanted' | 'couldGive') =>
      outlook.days.reduce((sum, day) => sum + day[part].p50, 0)
    const crash = await whatIf({ kind: 'culture_crashes', cultureId: full.culture.id })
    expect(crash.before).toEqual((await planned()).outlook)
    expect(sumOf(crash.after, 'couldGive')).toBeLessThan(sumOf(crash.before, 'couldGive') / 10)
    expect(crash.after.days[1]!.chanceShort).toBe(1)
    const spawned = await whatIf({ kind: 'pair_spawns', pairId: full.pair.id })
    expect(sumOf(spawned.after, 'wanted')).toBeGreaterThan(sumOf(spawned.before, 'wanted'))
    const joined = await whatIf({ kind: 'another_pair', likePairId: full.pair.id })
    expect(sumOf(joined.after, 'wanted')).toBeGreaterThan(sumOf(joined.before, 'wanted'))
    const nobody = { kind: 'culture_crashes', cultureId: full.pair.id } as const
    await expect(whatIf(nobody)).rejects.toThrow('There is no such culture here')
  })

  test('knows how often cultures crash here from those that did', async () => {
    const params = { roomId: full.roomId }
    const couldGive = async () => {
      await planAgain()
      return (await planned()).outlook.days.at(-1)!.couldGive
    }
    const before = await couldGive()
    for (const number of [1, 2, 3, 4]) {
      const made = await world.ok(full.owner, 'createCulture', {
        params,
        body: { name: `Lost ${number}`, kind: 'rotifer', strain: 'L', volumeL: 10, temperatureC: 25, salinity: 20 },
      })
      const ended = await world.ok(full.owner, 'endCulture', {
        params: { ...params, cultureId: made.id },
        body: { cause: 'crashed', reason: 'foam and a smell', version: made.version },
      })
      expect(ended.endCause).toBe('crashed')
      const { entries } = await world.ok(full.owner, 'listAudit', { params, query: { limit: 1 } })
      expect(entries).toMatchObject([
        { action: 'culture.end', detail: { cause: 'crashed', reason: 'foam and a smell' } },
      ])
    }
    // Five crashes in a hundred days are more than one: in most futures the culture is gone within three weeks.
    expect((await couldGive()).p50).toBeLessThan(before.p50 / 2)
  })

  test('knows what became of larvae of batches that have ended', async () => {
    const params = { roomId: full.roomId }
    const hatchedOn = new Date(Date.parse(world.clock.now()) - 90 * 86_400_000).toISOString().slice(0, 10)
    const body = { tankId: full.larvalTank.id, species: 'amphiprion-ocellaris', hatchedOn, larvae: 300 }
    const made = await world.ok(full.owner, 'createLarvalBatch', { params, body })
    const data = { of: 'larvae' as const, number: 300, cause: 'other' as const }
    const at = `${hatchedOn}T23:00:00.000Z`
    await world.ok(full.owner, 'recordFact', { params, body: { kind: 'loss', subjectId: made.id, at, data } })
    const { version } = (await world.ok(full.viewer, 'listLarvalBatches', { params })).find(({ id }) => id === made.id)!
    const input = { reason: 'all of them died', version }
    await world.ok(full.owner, 'endLarvalBatch', { params: { ...params, batchId: made.id }, body: input })
    const { batches, facts } = await inSnapshot(world.database, (tx) => readEndedBatches(tx, full.roomId))
    expect(batches).toEqual([{ id: made.id, species: body.species, hatchedOn }])
    expect(facts.map(([, kind]) => kind).sort()).toEqual(expect.arrayContaining(['hatch', 'loss']))
  })

  test('is what the list goes by from then on, and the list says so', async () => {
    const params = { roomId: full.roomId }
    const startedAt = new Date(Date.parse(world.clock.now()) - 20 * 86_400_000).toISOString()
    const vessel = { volumeL: 20, temperatureC: 25, salinity: 20, startDensityPerMl: 150, startedAt }
    const body = { name: 'Old stock', kind: 'rotifer' as const, strain: 'L' as const, ...vessel }
    const { id } = await world.ok(full.owner, 'createCulture', { params, body })
    const data = { of: 'culture' as const, animals: [300, 310], volumeMl: 1 }
    await world.ok(full.owner, 'recordFact', { params, body: { kind: 'count', subjectId: id, data } })
    expect(await planAgain()).toBe('planned')
    const { tasks } = await getDay({ ...asViewer(), date: 'today' })
    const feeds = tasks.filter(({ ruleId, state }) => ruleId === 'larval-prey-top-up' && state === 'open')
    expect(feeds.length).toBeGreaterThan(0)
    const { madeAt, outlook, revision } = await planned()
    const given = outlook.days[0]!.gives.filter(({ eaterId }) => eaterId === full.batch.id)[0]!
    expect(given.cultureId).toBe(id)
    for (const { id: taskId } of feeds) {
      const { because } = await getTaskWhy({ ...asViewer(), taskId })
      expect(because.filter(({ origin }) => origin.kind === 'food_plan')).toMatchObject([
        { quantity: { value: given.volumeL, unit: 'L' }, origin: { madeAt } },
      ])
    }
    // Planned once more, nothing has changed: neither the plan nor the list is written anew.
    expect(await planAgain()).toBe('still-good')
    expect(await planned()).toMatchObject({ madeAt, revision, isStale: false })
  })

  test('is old on another day', async () => {
    world.clock.advanceMinutes(1440)
    expect((await planned()).isStale).toBe(true)
    await planAgain()
    expect((await planned()).outlook.days[0]!.date).toBe(world.clock.now().slice(0, 10))
  })
})
