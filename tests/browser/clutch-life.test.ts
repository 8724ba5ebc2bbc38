import { randomUUID } from 'node:crypto'
import { planRoomFood, thinkHere } from '@fryward/room'
import type { BodyInputOf, Clutch, Culture, FoodView, Id, Pair, Tank, Task } from '@fryward/shared'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { tickNow } from '../scheduler/room-clock.ts'
import { soon } from '../support/browser-steps.ts'
import { openStage, type Stage } from '../support/stage.ts'
import { openRoom, type Person } from '../support/world.ts'

const rounds = [
  { id: 'morning', name: 'Morning', at: '07:00' },
  { id: 'evening', name: 'Evening', at: '17:00' },
]
const vessel = { kind: 'rotifer' as const, strain: 'L' as const, temperatureC: 25, salinity: 25 }

/** A room whose clock is moved from one turning point of a clutch to the next, lived in by its owner. */
class ClutchRoom {
  owner!: Person
  roomId!: string
  pair!: Pair
  clutch!: Clutch
  cultures!: Culture[]
  tanks!: Tank[]
  constructor(readonly stage: Stage) {}

  /** A pair of ocellaris at 27 C, and cultures three weeks old that are counted every morning. */
  async open(name: string, cultures: { name: string; volumeL: number; isBackup: boolean }[]): Promise<this> {
    const { world } = this.stage
    const startedAt = '2026-02-10T07:00:00.000Z'
    const tank = (tankName: string, kind: Tank['kind'], volumeL: number) => ({
      name: tankName,
      kind,
      volumeL,
      temperatureC: 27,
      salinity: 30,
    })
    const { owner, room } = await openRoom(world, {
      ...{ name, timeZone: 'UTC', rounds, cultures: [] },
      tanks: [
        tank('Pair tank', 'broodstock', 80),
        tank('Larval tank', 'larval', 30),
        tank('Grow-out', 'grow_out', 200),
      ],
    })
    this.owner = owner
    this.roomId = room.id
    for (const each of cultures)
      await this.ok('createCulture', { ...vessel, ...each, startedAt, startDensityPerMl: 120 })
    this.cultures = await world.ok(owner, 'listCultures', { params: this.params })
    this.tanks = await world.ok(owner, 'listTanks', { params: this.params })
    const body = { name: `${name} pair`, species: 'amphiprion-ocellaris', tankId: this.tanks[0]!.id }
    this.pair = await world.ok(owner, 'createPair', { params: this.params, body })
    return this
  }
  get params() {
    return { roomId: this.roomId }
  }
  path = (page: string) => `/rooms/${this.roomId}/${page}`
  private ok(id: 'createCulture', body: BodyInputOf<'createCulture'>) {
    return this.stage.world.ok(this.owner, id, { params: this.params, body })
  }

  /** At an hour of a date: the lists are open, the cultures that stand are counted, and the food is planned. */
  async at(moment: string, perMl: Record<string, number> = {}): Promise<void> {
    this.stage.world.clock.set(`2026-${moment}:00.000Z`)
    await tickNow(this.stage.world)
    for (const { id, name } of this.cultures)
      if (perMl[name] !== undefined)
        await this.record({
          ...{ kind: 'count', subjectId: id },
          data: {
            of: 'culture',
            animals: [perMl[name], perMl[name] + 4, perMl[name] - 4],
            volumeMl: 1,
            females: 60,
            eggs: 20,
          },
        })
    await this.plan()
  }
  plan() {
    const { database, clock } = this.stage.world
    const ctx = { database, actor: { kind: 'system', job: 'food' } as const, now: clock.now() }
    return planRoomFood({ ctx, roomId: this.roomId, thinker: thinkHere })
  }
  record(body: BodyInputOf<'recordFact'>) {
    return this.stage.world.ok(this.owner, 'recordFact', { params: this.params, body })
  }
  food(): Promise<FoodView> {
    return this.stage.world.ok(this.owner, 'getFood', { params: this.params })
  }

  /** Whether a number of the task was read from a plan. */
  async isByPlan(taskId: Id): Promise<boolean> {
    const { because } = await this.stage.world.ok(this.owner, 'getTaskWhy', { params: { ...this.params, taskId } })
    return because.some(({ origin }) => origin.kind === 'food_plan')
  }
  async asked(ruleId: string): Promise<Task> {
    const date = this.stage.world.clock.now().slice(0, 10)
    const { tasks } = await this.stage.world.ok(this.owner, 'getDay', { params: { ...this.params, date } })
    const task = tasks.find((each) => each.ruleId === ruleId && each.state === 'open')
    if (!task)
      throw new Error(`${ruleId} is not asked for on ${date}; there is ${tasks.map((each) => each.ruleId).join(', ')}`)
    return task
  }
  async did(ruleId: string, values: Record<string, unknown> = {}): Promise<Task> {
    const task = await this.asked(ruleId)
    this.stage.world.clock.advanceMinutes(5)
    return this.stage.world.ok(this.owner, 'signOffTask', {
      params: { ...this.params, taskId: task.id },
      body: { values, confirmed: task.fields.map(({ name }) => name) },
      key: randomUUID(),
    })
  }
  async spawn(eggs: number): Promise<void> {
    const body = { pairId: this.pair.id, spawnedAt: '2026-03-03T12:00:00.000Z', eggs, intent: 'raise_all' as const }
    this.clutch = await this.stage.world.ok(this.owner, 'createClutch', { params: this.params, body })
  }
  look(page: string) {
    return this.stage.openPage(this.owner, { path: this.path(page) })
  }
  /** Chooses a cure on the page of the food ahead, as the owner reads it there. */
  async choose(cure: RegExp): Promise<void> {
    const page = await this.look('food')
    await page.getByRole('button', { name: cure }).first().click()
    await page.getByRole('button', { name: 'Do this' }).click()
    await page.getByRole('heading', { name: 'Under way' }).waitFor(soon)
    await page.context().close()
  }
}

const likeliest = ({ plan }: FoodView, clutchId: string): number =>
  Math.max(
    ...(plan!.outlook.eaters.find(({ subjectId }) => subjectId === clutchId)?.nights ?? []).map(
      (night) => night.probability,
    ),
  )

let stage: Stage
describe('the life of a clutch', () => {
  beforeAll(async () => {
    stage = await openStage({ from: '2026-03-03T07:30:00.000Z' })
  })
  afterAll(() => stage.close())

  it('is lived through: food in time because the plan asked, hatch, first feeds, settled, placed, and read by the owner', async () => {
    const room = await new ClutchRoom(stage).open('Whole', [{ name: 'R1', volumeL: 6, isBackup: false }])
    const { world } = stage
    await room.at('03-03T07:30', { R1: 150 })
    expect((await room.food()).plan!.outlook.worry).toBeNull()

    // Spawning seen: one small culture does not feed what may hatch, and the plan asks for another in time.
    world.clock.set('2026-03-03T13:00:00.000Z')
    await room.spawn(800)
    await room.plan()
    const atFirst = likeliest(await room.food(), room.clutch.id)
    expect((await room.food()).plan!.outlook.worry).not.toBeNull()
    await room.choose(/^Start a culture of/)
    await room.at('03-04T08:00', { R1: 150 })
    const started = await room.did('food-start-culture')
    expect(await room.isByPlan(started.id)).toBe(true)
    room.cultures = await world.ok(room.owner, 'listCultures', { params: room.params })
    const young = room.cultures.find(({ parentCultureId }) => parentCultureId === room.cultures[0]!.id)!
    expect(young.volumeL).toBeGreaterThan(0)

    // Nights narrow as the eggs turn silver; the nest is pulled before the likeliest.
    await room.at('03-09T13:00', { R1: 170, [young.name]: 150 })
    await room.record({
      kind: 'observation',
      subjectId: room.clutch.id,
      data: { signs: ['eggs_seen'], eggStage: 'silver' },
    })
    await room.plan()
    expect(likeliest(await room.food(), room.clutch.id)).toBeGreaterThan(atFirst)
    await room.at('03-10T13:00', { R1: 180, [young.name]: 170 })
    const today = await room.look('today')
    await today.getByRole('heading', { name: /may hatch tonight/ }).waitFor(soon)
    await today.context().close()
    await room.did('clutch-pull-nest')

    // The morning after: a batch, whose first feeds come from where the plan says.
    await room.at('03-11T07:30', { R1: 190, [young.name]: 180 })
    await room.did('clutch-morning-after', { hatched: 'all', larvae: 600 })
    await room.plan()
    const feed = await room.did('larval-prey-top-up')
    expect(await room.isByPlan(feed.id)).toBe(true)
    const eats = await room.look('who-eats')
    await eats
      .getByRole('table')
      .getByText('Larval tank', { exact: false })
      .or(eats.getByRole('img'))
      .first()
      .waitFor(soon)
    await eats.context().close()
    const [batch] = await world.ok(room.owner, 'listLarvalBatches', { params: room.params })

    // Artemia, metamorphosis, settlement and the move to grow-out.
    await room.at('03-17T08:00', { R1: 180, [young.name]: 180 })
    await room.record({ kind: 'feeding', subjectId: batch!.id, data: { food: 'artemia', animals: 20_000 } })
    await room.record({ kind: 'loss', subjectId: batch!.id, data: { of: 'larvae', number: 150, cause: 'unknown' } })
    await room.at('03-22T08:00', { R1: 180 })
    await room.record({ kind: 'observation', subjectId: batch!.id, data: { signs: ['settled'] } })
    const group = await world.ok(room.owner, 'createJuvenileGroup', {
      params: room.params,
      body: {
        tankId: room.tanks[2]!.id,
        fromBatchId: batch!.id,
        settledOn: '2026-03-22',
        number: 300,
        beyondBook: 'counted at the move',
      },
    })
    const moved = await world.ok(room.owner, 'listLarvalBatches', { params: room.params })
    await world.ok(room.owner, 'endLarvalBatch', {
      params: { ...room.params, batchId: batch!.id },
      body: { reason: 'All moved to grow-out.', version: moved[0]!.version },
    })

    // Placed when they are grown, and read clutch by clutch.
    await room.at('06-20T08:00')
    const placing = {
      outcome: 'placed' as const,
      number: 120,
      eatsDryFood: true,
      wasUnfedADay: true,
      toWhom: 'a breeder',
      price: '12 each',
    }
    await room.record({ kind: 'outcome', subjectId: group.id, data: placing })
    const survival = await room.look('survival')
    const row = survival.getByRole('article').filter({ hasText: 'Hatched' })
    for (const number of ['800', '600', '300', '120 so far'])
      await row.getByText(number, { exact: true }).first().waitFor(soon)
    await row.getByRole('link').first().click()
    await survival.getByRole('img', { name: /^Life line\./ }).waitFor(soon)
    await survival.context().close()
  })

  it('goes on from the backup where the feeding culture is lost on hatch eve, and says what is at risk', async () => {
    stage.world.clock.set('2026-07-01T07:30:00.000Z')
    const room = await new ClutchRoom(stage).open('Crash', [
      { name: 'R1', volumeL: 18, isBackup: false },
      { name: 'R2', volumeL: 18, isBackup: true },
    ])
    const { world } = stage
    await room.at('07-01T07:30', { R1: 200, R2: 180 })
    const body = {
      pairId: room.pair.id,
      spawnedAt: '2026-06-24T12:00:00.000Z',
      eggs: 300,
      intent: 'raise_all' as const,
    }
    room.clutch = await world.ok(room.owner, 'createClutch', { params: room.params, body })
    await room.plan()
    expect((await room.food()).plan!.outlook.backupsUsed).toEqual([])

    world.clock.set('2026-07-01T13:00:00.000Z')
    const [lost, backup] = room.cultures
    const end = { cause: 'crashed' as const, reason: 'foam and a smell', version: lost!.version }
    await world.ok(room.owner, 'endCulture', { params: { ...room.params, cultureId: lost!.id }, body: end })
    await room.plan()
    const today = await room.look('today')
    const call = today.getByRole('region', { name: /may hatch tonight/ })
    await call
      .getByText(/^No culture can feed them tomorrow/)
      .first()
      .waitFor(soon)
    await today
      .getByText(/rotifers may fall short for/)
      .first()
      .waitFor(soon)
    await today.context().close()

    await room.choose(/^Let the backup give/)
    await room.plan()
    const { plan, underWay } = await room.food()
    expect(underWay.map(({ change }) => change.kind)).toEqual(['use_backups'])
    expect(plan!.outlook.backupsUsed).toEqual([backup!.id])

    world.clock.set('2026-07-02T07:30:00.000Z')
    await room.at('07-02T07:30', { R2: 180 })
    await room.did('clutch-morning-after', { hatched: 'all', larvae: 240 })
    await room.plan()
    const feed = await room.asked('larval-prey-top-up')
    expect(feed.title).toMatchObject({ from: 'R2' })
    expect(await room.isByPlan(feed.id)).toBe(true)
    const eats = await room.look('who-eats')
    await eats.getByRole('table').getByText('R2').first().waitFor(soon)
    await eats.context().close()
  })
})
