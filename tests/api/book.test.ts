import type { JuvenileGroup, LarvalBatch, NewFact } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openWorld, type Person, type World } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { type FullRoom, minutesFrom, openFullRoom } from './full-room.ts'
import { plausibleValues } from './plausible-values.ts'

let world: World
let full: FullRoom
let roomId: string
let batch: LarvalBatch

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  roomId = full.roomId
})
afterAll(() => world.close())
beforeEach(async () => {
  world.clock.advanceMinutes(10)
  batch = await newBatch(140)
})

const newBatch = (larvae?: number) =>
  world.ok(full.owner, 'createLarvalBatch', {
    params: { roomId },
    body: {
      ...{ tankId: full.larvalTank.id, species: 'amphiprion-ocellaris', hatchedOn: world.clock.now().slice(0, 10) },
      ...(larvae === undefined ? {} : { larvae }),
    },
  })
const moveOut = (number: number, more: object = {}) =>
  world.call(full.standIn, 'createJuvenileGroup', {
    params: { roomId },
    body: {
      ...{ tankId: full.larvalTank.id, fromBatchId: batch.id, settledOn: world.clock.now().slice(0, 10), number },
      ...more,
    },
  })
const record = (body: NewFact, person: Person = full.standIn) =>
  world.call(person, 'recordFact', { params: { roomId }, body })
const lose = (number: number, more: object = {}, at?: string) =>
  record({ kind: 'loss', subjectId: batch.id, data: { number, of: 'larvae', ...more }, ...(at ? { at } : {}) })
const countHeads = (heads: number) =>
  record({ kind: 'count', subjectId: batch.id, data: { of: 'larvae', animals: [heads], dilution: 1 } })
const strike = (factId: string) =>
  world.ok(full.owner, 'strikeFact', { params: { roomId, factId }, body: { reason: 'a slip of the thumb' } })
const numberNow = async (batchId = batch.id) =>
  (await world.ok(full.viewer, 'listLarvalBatches', { params: { roomId } })).find(({ id }) => id === batchId)?.numberNow
    ?.estimate
const groupNow = async (group: JuvenileGroup) =>
  (await world.ok(full.viewer, 'listJuvenileGroups', { params: { roomId } })).find(({ id }) => id === group.id)
const why = 'counted while they were moved'

describe('more than the book says', () => {
  test('does not leave a batch unasked: the answer says the number and both ways out, and nothing is written', async () => {
    const before = await fingerprintOf(world, roomId)
    const answer = await moveOut(150)
    expect(answer.problem).toMatchObject({
      code: 'needs_confirmation',
      fields: [{ path: 'beyondBook', received: 150 }],
    })
    expect(answer.problem?.detail).toContain('The book says 140')
    expect(answer.problem?.detail).toContain('Count what is there first, or say why')
    expect(await fingerprintOf(world, roomId)).toEqual(before)
    expect((await moveOut(140)).status).toBe(201)
    expect(await numberNow()).toBe(0)
  })

  test('leaves with a reason, which the fact keeps and the audit log tells', async () => {
    const answer = await moveOut(150, { beyondBook: why })
    expect(answer.body).toMatchObject({ numberNow: 150, fromBatchId: batch.id })
    expect(await numberNow()).toBe(0)
    const { facts } = await world.ok(full.viewer, 'listFacts', {
      params: { roomId },
      query: { subjectId: batch.id, kind: 'transfer' },
    })
    expect(facts).toMatchObject([{ data: { number: 150, beyondBook: why } }])
    const { entries } = await world.ok(full.viewer, 'listAudit', { params: { roomId }, query: { limit: 20 } })
    expect(entries.find(({ action }) => action === 'book.correct')).toMatchObject({
      subjectId: batch.id,
      detail: { kind: 'transfer', number: 150, bookSaid: 140, reason: why },
    })
  })

  test('leaves after a count, without a reason', async () => {
    expect((await countHeads(165)).status).toBe(201)
    world.clock.advanceMinutes(1)
    expect((await moveOut(150)).status).toBe(201)
    expect(await numberNow()).toBe(15)
  })

  test('corrects the book for as long as it stands: struck out, all is as it would have been without it', async () => {
    const loss = await lose(150, { beyondBook: why })
    expect(await numberNow()).toBe(0)
    await strike(loss.body.id)
    expect(await numberNow()).toBe(140)
    const { body: few } = await lose(12)
    expect(await numberNow()).toBe(128)
    await strike(few.id)
    expect(await numberNow()).toBe(140)
  })

  test('is asked about alike for a loss, a move and a placing', async () => {
    const group = (await moveOut(100)).body
    const of = { batch: batch.id, group: group.id, tank: full.larvalTank.id }
    for (const [most, ask] of [
      [40, (number: number) => record({ kind: 'loss', subjectId: of.batch, data: { number, of: 'larvae' } })],
      [
        40,
        (number: number) => record({ kind: 'transfer', subjectId: of.batch, data: { number, toSubjectId: of.tank } }),
      ],
      [100, (number: number) => record({ kind: 'loss', subjectId: of.group, data: { number, of: 'juveniles' } })],
      [100, (number: number) => record({ kind: 'outcome', subjectId: of.group, data: { number, outcome: 'placed' } })],
      [250, (number: number) => record({ kind: 'loss', subjectId: full.clutch.id, data: { number, of: 'eggs' } })],
    ] as const) {
      const refused = await ask(most + 1)
      expect(refused.problem).toMatchObject({ code: 'needs_confirmation', fields: [{ path: 'data.beyondBook' }] })
      expect(refused.problem?.detail).toContain(`The book says ${most}`)
      const taken = await ask(most)
      expect(taken.status).toBe(201)
      await strike(taken.body.id)
    }
  })

  test('is told late against the days that followed', async () => {
    expect((await moveOut(130)).status).toBe(201)
    const asked = await lose(20, {}, minutesFrom(world, -5))
    expect(asked.problem?.detail).toContain('The book says 10')
    expect((await lose(10, {}, minutesFrom(world, -5))).status).toBe(201)
  })

  test('two who move the last at the same instant move them once', async () => {
    const answers = await Promise.all([moveOut(100), moveOut(100)])
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 422])
    expect(await numberNow()).toBe(40)
  })
})

describe('a number that nobody has said', () => {
  test('asks nothing: what leaves is believed', async () => {
    batch = await newBatch()
    expect((await moveOut(150)).status).toBe(201)
    expect(await numberNow()).toBeUndefined()
  })
})

describe('what leaves arrives', () => {
  test('in another batch, whose book takes it in', async () => {
    const other = await newBatch(30)
    await record({ kind: 'transfer', subjectId: batch.id, data: { number: 25, toSubjectId: other.id } })
    expect([await numberNow(), await numberNow(other.id)]).toEqual([115, 55])
  })

  test('in a group, together with what was there', async () => {
    const group = (await moveOut(60)).body
    world.clock.advanceMinutes(1)
    await record({ kind: 'transfer', subjectId: batch.id, data: { number: 25, toSubjectId: group.id } })
    await record({ kind: 'outcome', subjectId: group.id, data: { number: 5, outcome: 'placed' } })
    expect(await groupNow(group)).toMatchObject({ numberNow: 80, placed: 5, lost: 0 })
    expect(await numberNow()).toBe(55)
  })

  test.each([
    ['itself', () => batch.id],
    ['a culture', () => full.culture.id],
    ['the room', () => roomId],
  ])('not in %s', async (_where, to) => {
    const answer = await record({ kind: 'transfer', subjectId: batch.id, data: { number: 5, toSubjectId: to() } })
    expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'data.toSubjectId' }] })
  })
})

describe('a sign-off that tells of more', () => {
  test('is asked like an unusual value and booked once it is confirmed; taken back, the book is as before', async () => {
    await lose(135)
    world.clock.set(minutesFrom(world, 5 * 1440))
    // Working the new day out draws up the batch's siphoning.
    await countSomething()
    const task = (await world.ok(full.owner, 'getDay', { params: { roomId, date: 'today' } })).tasks.find(
      ({ subject, fields, state }) =>
        subject.id === batch.id && state === 'open' && fields.some(({ name }) => name === 'dead'),
    )!
    const values = { ...plausibleValues(task), dead: 8 }
    const fields = task.fields.map(({ name }) => name)
    const signOff = (confirmed: string[]) =>
      world.call(full.standIn, 'signOffTask', { params: { roomId, taskId: task.id }, body: { values, confirmed } })
    const asked = await signOff(fields)
    expect(asked.problem).toMatchObject({
      code: 'needs_confirmation',
      fields: [{ path: 'values.beyondBook', message: expect.stringContaining('The book says 5') }],
    })
    expect((await signOff([...fields, 'beyondBook'])).body).toMatchObject({ state: 'done' })
    expect(await numberNow()).toBe(0)
    await world.ok(full.standIn, 'undoTask', { params: { roomId, taskId: task.id }, body: {} })
    expect(await numberNow()).toBe(5)
  })
})

const countSomething = () =>
  record({
    kind: 'count',
    subjectId: full.culture.id,
    data: { of: 'culture', animals: [90], volumeMl: 1, dilution: 1 },
  })
