import type { Fact, NewFact, Task } from '@fryward/shared'
import { beforeAll, describe, expect, test } from 'vitest'
import { openRoom, type Person } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { minutesFrom, tasksOf } from './full-room.ts'
import { full, inOneRoom, newestAudit, roomId, world } from './one-room.ts'

inOneRoom()
let neighbour: Person
beforeAll(async () => {
  neighbour = (await openRoom(world, { name: 'Next door' })).owner
})

const record = (person: Person, body: NewFact | object) =>
  world.call(person, 'recordFact', { params: { roomId }, body: body as NewFact })
const strike = (person: Person, factId: string, reason = 'the wrong vessel') =>
  world.call(person, 'strikeFact', { params: { roomId, factId }, body: { reason } })
const count = (animals: number[], more: object = {}) => ({
  kind: 'count',
  subjectId: full.culture.id,
  data: { of: 'culture', animals, volumeMl: 1 },
  ...more,
})

/** One fact of every kind that is posted by itself, as it stands in the room of these tests. */
const examples = (): Record<string, { kind: string; subjectId: string; data: object }> => ({
  count: {
    kind: 'count',
    subjectId: full.culture.id,
    data: { of: 'culture', animals: [88, 91], volumeMl: 1, dilution: 1 },
  },
  harvest: {
    kind: 'harvest',
    subjectId: full.culture.id,
    data: {
      volumeL: 3,
      parts: [
        { to: 'larval_batch', subjectId: full.batch.id, volumeL: 2 },
        { to: 'drain', volumeL: 1 },
      ],
    },
  },
  feeding: {
    kind: 'feeding',
    subjectId: full.culture.id,
    data: { food: 'concentrate', concentrateId: full.concentrate.id, amountMl: 1.5 },
  },
  inoculation: { kind: 'inoculation', subjectId: full.culture.id, data: { densityPerMl: 80 } },
  water_change: {
    kind: 'water_change',
    subjectId: full.larvalTank.id,
    data: { removedL: 4, addedL: 4, salinity: 30, temperatureC: 27 },
  },
  water_test: { kind: 'water_test', subjectId: full.larvalTank.id, data: { pH: 8.1, totalAmmoniaNMgPerL: 0.1 } },
  loss: { kind: 'loss', subjectId: full.batch.id, data: { number: 3, of: 'larvae' } },
  transfer: { kind: 'transfer', subjectId: full.batch.id, data: { number: 5, toSubjectId: full.larvalTank.id } },
  observation: { kind: 'observation', subjectId: full.pair.id, data: { signs: ['all_well'], note: 'both eating' } },
  care: { kind: 'care', subjectId: full.culture.id, data: { act: 'brush_walls' } },
})

describe('recording', () => {
  test.each([
    'count',
    'harvest',
    'feeding',
    'inoculation',
    'water_change',
    'water_test',
    'loss',
    'transfer',
    'observation',
    'care',
  ])('a %s is appended with who, when and what, and has its audit row', async (kind) => {
    const body = examples()[kind]!
    const at = minutesFrom(world, -0.5)
    const answer = await record(full.standIn, { ...body, at })
    expect(answer.problem).toBeNull()
    expect(answer.status).toBe(201)
    expect(answer.body).toMatchObject({
      ...body,
      at,
      receivedAt: world.clock.now(),
      recordedByName: full.standIn.name,
      struckAt: null,
      taskId: null,
    })
    expect(await newestAudit()).toMatchObject({
      action: 'fact.record',
      revision: answer.body.revision,
      subjectId: body.subjectId,
      actor: { kind: 'person', userId: full.standIn.userId },
      detail: { factId: answer.body.id, kind },
    })
    // The answer is not read from the database; whoever reads it there finds the same.
    const query = { subjectId: body.subjectId }
    const read = await world.call(full.owner, 'listFacts', { params: { roomId }, query })
    expect(read.body.facts.find(({ id }) => id === answer.body.id)).toEqual(answer.body)
  })

  test('a viewer may not, a neighbour finds no room, and neither leaves a trace', async () => {
    const before = await fingerprintOf(world, roomId)
    expect((await record(full.viewer, count([80]))).problem?.code).toBe('not_allowed')
    expect((await record(neighbour, count([80]))).problem?.code).toBe('not_found')
    expect(await fingerprintOf(world, roomId)).toEqual(before)
  })

  test('the parts of a harvest add up to what was taken, to the last half centilitre', async () => {
    const harvest = (volumeL: number, ...litres: number[]) =>
      record(full.owner, {
        kind: 'harvest',
        subjectId: full.culture.id,
        data: { volumeL, parts: litres.map((each) => ({ to: 'drain', volumeL: each })) },
      })
    expect((await harvest(1, 0.333, 0.333, 0.334)).status).toBe(201)
    expect((await harvest(1, 0.5, 0.49)).problem?.fields?.[0]?.path).toBe('data.parts')
    expect((await harvest(1, 0.5, 0.51)).problem?.code).toBe('invalid_input')
  })

  test('no more is harvested than the vessel holds', async () => {
    const answer = await record(full.owner, {
      kind: 'harvest',
      subjectId: full.culture.id,
      data: { volumeL: 18.5, parts: [{ to: 'drain', volumeL: 18.5 }] },
    })
    expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'data.volumeL', received: 18.5 }] })
    expect(answer.problem?.detail).toContain('18 L')
  })

  test('a loss is kept about a tank, where fish in quarantine are no group of their own', async () => {
    const answer = await record(full.owner, {
      kind: 'loss',
      subjectId: full.pairTank.id,
      data: { number: 1, of: 'adults' },
    })
    expect(answer.status).toBe(201)
  })

  test.each([
    ['a count of a pair', () => ({ ...count([80]), subjectId: full.pair.id })],
    ['a harvest of a tank', () => ({ ...examples().harvest, subjectId: full.pairTank.id })],
    ['a water test of a pair', () => ({ ...examples().water_test, subjectId: full.pair.id })],
    ['a loss in the room', () => ({ ...examples().loss, subjectId: roomId })],
  ])('%s says what it can be about', async (_what, body) => {
    const answer = await record(full.owner, body())
    expect(answer.problem).toMatchObject({ code: 'invalid_input', fields: [{ path: 'subjectId' }] })
  })

  test('a count without its volume is no density', async () => {
    const answer = await record(full.owner, { ...count([80]), data: { of: 'culture', animals: [80] } })
    expect(answer.problem?.fields).toMatchObject([{ path: 'data.volumeMl' }])
  })

  test('heads are counted without a volume', async () => {
    const answer = await record(full.owner, {
      kind: 'count',
      subjectId: full.batch.id,
      data: { of: 'larvae', animals: [190] },
    })
    expect(answer.status).toBe(201)
    const batches = await world.ok(full.owner, 'listLarvalBatches', { params: { roomId } })
    expect(batches.find((batch) => batch.id === full.batch.id)?.numberNow?.estimate).toBe(190)
  })

  test('what is still to come is not recorded, but a phone may run a minute ahead', async () => {
    expect((await record(full.owner, count([80], { at: minutesFrom(world, 3) }))).problem?.fields).toMatchObject([
      { path: 'at' },
    ])
    expect((await record(full.owner, count([80], { at: minutesFrom(world, 1) }))).status).toBe(201)
  })

  test('spawnings and hatches come with their clutch or batch, not by themselves', async () => {
    for (const kind of ['spawning', 'hatch', 'nonsense'])
      expect((await record(full.owner, { kind, subjectId: full.clutch.id, data: {} })).problem?.code).toBe(
        'invalid_input',
      )
  })
})

describe('striking out', () => {
  const listed = async (): Promise<Pick<Task, 'key' | 'state' | 'amount'>[]> =>
    (await tasksOf(world, full.owner, roomId))
      .filter((task) => task.state === 'open')
      .map(({ key, state, amount }) => ({ key, state, amount }))

  test('a record struck out stays readable, and the lists are what they would have been without it', async () => {
    const before = await listed()
    const recorded = (await record(full.owner, count([400, 410]))).body
    expect(await listed()).not.toEqual(before)
    const answer = await strike(full.caretaker, recorded.id, 'counted the other culture')
    expect(answer.status).toBe(200)
    expect(answer.body).toMatchObject({
      struckAt: world.clock.now(),
      struckByName: full.caretaker.name,
      struckReason: 'counted the other culture',
      data: recorded.data,
    })
    expect(await listed()).toEqual(before)
    expect(await newestAudit()).toMatchObject({
      action: 'fact.strike',
      actor: { userId: full.caretaker.userId },
      detail: { factId: recorded.id, kind: 'count', reason: 'counted the other culture' },
    })
  })

  test('it needs a reason', async () => {
    const { id } = (await record(full.owner, count([80]))).body
    for (const reason of ['', '  ', 'x', 'x'.repeat(501)])
      expect((await strike(full.owner, id, reason)).problem?.fields?.[0]?.path).toBe('reason')
  })

  test('it happens once, also when two do it at the same instant', async () => {
    const { id } = (await record(full.owner, count([80]))).body
    const answers = await Promise.all([
      strike(full.owner, id, 'owner said so'),
      strike(full.caretaker, id, 'Carla said so'),
    ])
    expect(answers.map((answer) => answer.status).sort()).toEqual([200, 409])
    const again = await strike(full.owner, id)
    expect(again.problem).toMatchObject({ code: 'wrong_state', current: { id } })
  })

  test('a stand-in strikes out their own record only, a viewer none, a neighbour finds none', async () => {
    const own = (await record(full.standIn, count([80]))).body
    const others = (await record(full.owner, count([80]))).body
    expect((await strike(full.standIn, others.id)).problem?.code).toBe('not_allowed')
    expect((await strike(full.viewer, own.id)).problem?.code).toBe('not_allowed')
    expect((await strike(neighbour, own.id)).problem?.code).toBe('not_found')
    expect((await strike(full.standIn, own.id)).status).toBe(200)
  })

  test("a record of another room is not found, even by that other room's id", async () => {
    const { id } = (await record(full.owner, count([80]))).body
    const mine = (await world.ok(neighbour, 'getMe')).rooms[0]!
    const answer = await world.call(neighbour, 'strikeFact', {
      params: { roomId: mine.id, factId: id },
      body: { reason: 'not mine to strike' },
    })
    expect(answer.problem?.code).toBe('not_found')
  })
})

describe('reading', () => {
  const list = (query: Record<string, string | number> = {}, person = full.viewer) =>
    world.ok(person, 'listFacts', { params: { roomId }, query })
  async function everyPage(limit: number, query: Record<string, string | number> = {}): Promise<Fact[]> {
    const found: Fact[] = []
    let before: string | null = null
    do {
      const page: { facts: Fact[]; nextBefore: string | null } = await list({
        ...query,
        limit,
        ...(before ? { before } : {}),
      })
      found.push(...page.facts)
      before = page.nextBefore
    } while (before)
    return found
  }

  test('paging gives every fact once and newest first, also those of one instant', async () => {
    const at = minutesFrom(world, -0.1)
    for (const animals of [11, 12, 13, 14, 15]) await record(full.owner, count([animals], { at }))
    const whole = (await list({ limit: 500 })).facts
    expect(whole.length).toBeGreaterThan(20)
    for (const limit of [1, 2, 3, 7]) {
      const paged = await everyPage(limit)
      expect(paged.map((fact) => fact.id)).toEqual(whole.map((fact) => fact.id))
    }
    expect([...whole].sort((a, b) => (a.at < b.at ? 1 : -1)).map((fact) => fact.at)).toEqual(
      whole.map((fact) => fact.at),
    )
  })

  test('a subject and a kind narrow it down', async () => {
    const facts = await everyPage(3, { subjectId: full.culture.id, kind: 'count' })
    const { rows } = await world.database.pool.query<{ id: string }>(
      "SELECT id FROM fact WHERE room_id = $1 AND subject_id = $2 AND kind = 'count'",
      [roomId, full.culture.id],
    )
    expect(facts.map((fact) => fact.id).sort()).toEqual(rows.map((row) => row.id).sort())
  })

  test('the audit log pages by revision without losing an entry', async () => {
    const limitOnce = 200
    const whole = await world.ok(full.viewer, 'listAudit', { params: { roomId }, query: { limit: limitOnce } })
    expect(whole.nextBefore).toBeNull()
    for (const limit of [1, 2, 5]) {
      const paged: typeof whole.entries = []
      let before: number | null = null
      do {
        const page: typeof whole = await world.ok(full.viewer, 'listAudit', {
          params: { roomId },
          query: { limit, ...(before ? { before } : {}) },
        })
        paged.push(...page.entries)
        before = page.nextBefore
      } while (before)
      expect(paged).toEqual(whole.entries)
    }
  })

  test('every revision of the room has its audit entry', async () => {
    const { pool } = world.database
    const { rows } = await pool.query<{ missing: number }>(
      `SELECT count(*)::int AS missing FROM room, generate_series(1, room.revision) AS step
       WHERE NOT EXISTS (SELECT FROM audit_entry a WHERE a.room_id = room.id AND a.revision = step)`,
    )
    expect(rows[0]!.missing).toBe(0)
  })
})

describe('the database itself', () => {
  const refusal = (statement: string, values: unknown[]) =>
    world.database.pool.query(statement, values).then(
      () => 'accepted',
      (error: Error) => error.message,
    )

  test('refuses to edit or delete a fact', async () => {
    const { id } = (await record(full.owner, count([80]))).body
    const at = [roomId, id]
    expect(await refusal(`UPDATE fact SET data = '{}' WHERE room_id = $1 AND id = $2`, at)).toContain('never edited')
    expect(await refusal('UPDATE fact SET at = now() WHERE room_id = $1 AND id = $2', at)).toContain('never edited')
    expect(await refusal('UPDATE fact SET recorded_by = NULL WHERE room_id = $1 AND id = $2', at)).toContain(
      'never edited',
    )
    expect(await refusal('DELETE FROM fact WHERE room_id = $1 AND id = $2', at)).toContain('never deleted')
  })

  test('refuses to take a strike back or to strike without a reason', async () => {
    const { id } = (await record(full.owner, count([80]))).body
    const at = [roomId, id]
    const half = 'UPDATE fact SET struck_at = now() WHERE room_id = $1 AND id = $2'
    expect(await refusal(half, at)).toContain('fact_struck_whole')
    await strike(full.owner, id)
    const back =
      'UPDATE fact SET struck_at = NULL, struck_by = NULL, struck_reason = NULL WHERE room_id = $1 AND id = $2'
    expect(await refusal(back, at)).toContain('struck out once')
  })

  test('refuses to change or delete the audit log', async () => {
    expect(await refusal("UPDATE audit_entry SET actor_name = 'x' WHERE room_id = $1", [roomId])).toContain(
      'never changed',
    )
    expect(await refusal('DELETE FROM audit_entry WHERE room_id = $1', [roomId])).toContain('never changed')
  })
})
