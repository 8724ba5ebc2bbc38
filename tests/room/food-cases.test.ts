import { getDay, getFood, planRoomFood, thinkHere } from '@fryward/room'
import type { BodyInputOf, ClutchIntent, FoodView } from '@fryward/shared'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const tank = (name: string, kind: 'broodstock' | 'larval', volumeL: number) => ({
  ...{ name, kind, volumeL, temperatureC: 27, salinity: 30 },
})
const tanks = [tank('Pair tank', 'broodstock', 80), tank('Nursery 1', 'larval', 30), tank('Nursery 2', 'larval', 30)]

/** A room of its own in the one world, as its owner works in it. */
class Case {
  owner!: Person
  roomId!: string
  tankIds!: string[]
  get params() {
    return { roomId: this.roomId }
  }
  async open(setup: Partial<BodyInputOf<'createRoom'>> = {}): Promise<this> {
    const { owner, room } = await openRoom(world, { timeZone: 'UTC', cultures: [], tanks, ...setup })
    this.owner = owner
    this.roomId = room.id
    this.tankIds = (await world.ok(owner, 'listTanks', { params: this.params })).map(({ id }) => id)
    return this
  }
  /** Three weeks old and counted today. */
  async culture(name: string, perMl = 250): Promise<string> {
    const startedAt = new Date(Date.parse(world.clock.now()) - 21 * 86_400_000).toISOString()
    const vessel = { kind: 'rotifer' as const, strain: 'L' as const, volumeL: 18, temperatureC: 25, salinity: 20 }
    const body = { ...vessel, name, startedAt, startDensityPerMl: 100 }
    const { id } = await world.ok(this.owner, 'createCulture', { params: this.params, body })
    await this.record({ kind: 'count', subjectId: id, data: { of: 'culture', animals: [perMl, perMl], volumeMl: 1 } })
    return id
  }
  /** Eggs so many days old of a pair of a species. */
  async clutch(species: string, { daysOld = 5, eggs = 400, intent = 'raise_all' as ClutchIntent, name = 'A' } = {}) {
    const body = { name: `Pair ${name}`, species, tankId: this.tankIds[0]! }
    const pair = await world.ok(this.owner, 'createPair', { params: this.params, body })
    const spawnedAt = new Date(Date.parse(world.clock.now()) - daysOld * 86_400_000).toISOString()
    return world.ok(this.owner, 'createClutch', {
      params: this.params,
      body: { pairId: pair.id, spawnedAt, eggs, intent },
    })
  }
  batch(clutchIds: string[], larvae: number, at = 1) {
    const hatchedOn = new Date(Date.parse(world.clock.now()) - 86_400_000).toISOString().slice(0, 10)
    const body = { tankId: this.tankIds[at]!, clutchIds, hatchedOn, larvae }
    return world.ok(this.owner, 'createLarvalBatch', { params: this.params, body })
  }
  link(batchId: string, cultureId: string) {
    const body = { batchId, cultureId, fromOn: world.clock.now().slice(0, 10) }
    return world.ok(this.owner, 'createFeedLink', { params: this.params, body })
  }
  record(body: BodyInputOf<'recordFact'>) {
    return world.ok(this.owner, 'recordFact', { params: this.params, body })
  }
  async outlook() {
    const ctx = { database: world.database, actor: { kind: 'system', job: 'food' } as const, now: world.clock.now() }
    await planRoomFood({ ctx, roomId: this.roomId, thinker: thinkHere })
    const asOwner = { ctx: world.contextOf(this.owner), roomId: this.roomId }
    // The list is there whatever the plan says.
    await getDay({ ...asOwner, date: 'today' })
    return (await getFood(asOwner)).plan!.outlook
  }
}
type Outlook = NonNullable<FoodView['plan']>['outlook']
const wanted = ({ days }: Outlook): number => days.reduce((sum, day) => sum + day.wanted.p50, 0)
const eaters = (outlook: Outlook) => outlook.eaters.map(({ kind, subjectId }) => [kind, subjectId])

describe('the food of a room', () => {
  test('that is empty, or has one culture and nobody to feed, worries about nothing', async () => {
    const room = await new Case().open()
    expect(await room.outlook()).toMatchObject({ eaters: [], cultures: [], worry: null, shortTotal: 0 })
    await room.culture('R1')
    const outlook = await room.outlook()
    expect(outlook).toMatchObject({ eaters: [], worry: null, shortTotal: 0 })
    expect(outlook.days.every(({ gives }) => gives.length === 0)).toBe(true)
  })

  test('with one batch and no culture says from the first day on that all of it is missing', async () => {
    const room = await new Case().open()
    const batch = await room.batch([(await room.clutch('amphiprion-ocellaris', { daysOld: 9 })).id], 300)
    const outlook = await room.outlook()
    expect(eaters(outlook)[0]).toEqual(['larval_batch', batch.id])
    expect(outlook.worry).toMatchObject({ date: outlook.days[0]!.date, chanceShort: 1 })
  })

  test('of a mouthbrooder and of seahorses asks for no rotifers: their young are large', async () => {
    for (const species of ['pterapogon-kauderni', 'hippocampus-erectus']) {
      const room = await new Case().open()
      await room.culture('R1')
      await room.clutch(species, { daysOld: 15, eggs: 40 })
      expect(await room.outlook()).toMatchObject({ eaters: [], worry: null })
    }
  })

  test('that leaves all its clutches with their parents raises nothing, and wants nothing of them', async () => {
    const room = await new Case().open()
    await room.culture('R1')
    const clutch = await room.clutch('amphiprion-ocellaris', { intent: 'leave_with_parents' })
    expect((await room.outlook()).eaters.map(({ subjectId }) => subjectId)).not.toContain(clutch.id)
  })

  test('of a clutch raised in part is less than of all of it', async () => {
    const whole = await new Case().open()
    await whole.clutch('amphiprion-ocellaris', { eggs: 900 })
    const part = await new Case().open()
    await part.clutch('amphiprion-ocellaris', { eggs: 900, intent: 'raise_part' })
    const [all, some] = [await whole.outlook(), await part.outlook()]
    const larvaeOf = (outlook: Outlook) => outlook.eaters.find(({ kind }) => kind === 'clutch')!.larvae!
    expect(larvaeOf(some)).toBe(larvaeOf(all) / 2)
    expect(wanted(some)).toBeGreaterThan(0)
    expect(wanted(some)).toBeLessThanOrEqual(wanted(all))
  })

  test('of two clutches in one tank is that of one batch, and of a batch that is split and merged again the same', async () => {
    const room = await new Case().open()
    const cultureId = await room.culture('R1')
    const one = await room.clutch('amphiprion-ocellaris', { daysOld: 9, name: 'A' })
    const two = await room.clutch('amphiprion-ocellaris', { daysOld: 9, name: 'B' })
    const batch = await room.batch([one.id, two.id], 400)
    await room.link(batch.id, cultureId)
    const together = await room.outlook()
    expect(eaters(together).filter(([kind]) => kind === 'larval_batch')).toEqual([['larval_batch', batch.id]])
    const larvaeNow = (outlook: Outlook) =>
      outlook.eaters.filter(({ kind }) => kind === 'larval_batch').reduce((sum, { larvae }) => sum + (larvae ?? 0), 0)
    expect(larvaeNow(together)).toBe(400)

    const third = await room.clutch('amphiprion-ocellaris', { daysOld: 9, name: 'C' })
    const half = await room.batch([third.id], 10, 2)
    await room.link(half.id, cultureId)
    const start = larvaeNow(await room.outlook())
    const move = (from: string, to: string) =>
      room.record({ kind: 'transfer', subjectId: from, data: { number: 150, toSubjectId: to } })
    await move(batch.id, half.id)
    const split = await room.outlook()
    expect(split.eaters.filter(({ kind }) => kind === 'larval_batch')).toHaveLength(2)
    expect(larvaeNow(split)).toBe(start)
    await move(half.id, batch.id)
    expect(larvaeNow(await room.outlook())).toBe(start)
  })
})
