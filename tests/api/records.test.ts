import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { minutesFrom } from './full-room.ts'
import { full, inOneRoom, make, newestAudit, roomId, world } from './one-room.ts'
import { send } from './send.ts'

inOneRoom()

const params = () => ({ roomId })
const today = () => make.today()
async function exported(what: string, query: Record<string, string> = {}) {
  const answer = await send(world, full.owner, 'downloadRecords', {
    params: { roomId, what },
    query: { from: '2026-03-01', to: today(), ...query },
  })
  expect(answer.status, answer.text).toBe(200)
  const rows: Record<string, string>[] = parse(answer.text, {
    bom: true,
    columns: true,
    delimiter: query.decimal === 'comma' ? ';' : ',',
  })
  return { text: answer.text, rows }
}
const importing = (text: string) => world.call(full.caretaker, 'importCounts', { params: params(), body: { text } })
const preview = (text: string) => world.ok(full.caretaker, 'previewImport', { params: params(), body: { text } })
const countsOf = async (subjectId: string) =>
  (await world.ok(full.viewer, 'listFacts', { params: params(), query: { subjectId, kind: 'count' } })).facts.filter(
    ({ struckAt }) => struckAt === null,
  )

describe('an export', () => {
  test('of counts has the date and time of the room, a number a cell and no formula', async () => {
    const thing = await make.culture({ name: '=HYPERLINK("http://x")' })
    await world.ok(full.standIn, 'recordFact', {
      params: params(),
      body: {
        kind: 'count',
        subjectId: thing.id,
        data: { of: 'culture', animals: [10, 15], volumeMl: 2.5, dilution: 2 },
      },
    })
    const { rows, text } = await exported('counts')
    // Lisbon is on UTC until the end of March.
    expect(rows.at(-1)).toMatchObject({
      ...{ date: today(), time: world.clock.now().slice(11, 16), of: 'culture', samples: '10 15', volume_ml: '2.5' },
      ...{ per_ml: '10', recorded_by: 'Stand-in Sam', thing: '\'=HYPERLINK("http://x")' },
    })
    expect(rows).toHaveLength(3)
    expect(text).toMatch(/^\ufeffdate,time,thing,/)
    const comma = await exported('counts', { decimal: 'comma' })
    expect(comma.rows.at(-1)).toMatchObject({ volume_ml: '2,5', per_ml: '10' })
  })

  test('leaves out what was struck, and days that were not asked for', async () => {
    const { rows } = await exported('counts', { from: today() })
    const fact = await world.ok(full.standIn, 'recordFact', {
      params: params(),
      body: { kind: 'count', subjectId: full.batch.id, data: { of: 'larvae', animals: [180] } },
    })
    expect((await exported('counts', { from: today() })).rows).toHaveLength(rows.length + 1)
    await world.ok(full.standIn, 'strikeFact', { params: { roomId, factId: fact.id }, body: { reason: 'by mistake' } })
    expect((await exported('counts', { from: today() })).rows).toHaveLength(rows.length)
    expect((await exported('counts', { to: '2026-03-01' })).rows).toHaveLength(0)
  })

  test('of more rows than are read at once has each of them once', async () => {
    const thing = await make.culture()
    const { revision } = await world.database.prisma.room.findUniqueOrThrow({ where: { id: roomId } })
    const at = minutesFrom(world, -60)
    await world.database.prisma.fact.createMany({
      data: Array.from({ length: 2100 }, (_, i) => ({
        ...{
          roomId,
          id: crypto.randomUUID(),
          kind: 'count' as const,
          subjectId: thing.id,
          at,
          receivedAt: at,
          revision,
        },
        data: { of: 'culture', animals: [i], volumeMl: 1, dilution: 1 },
      })),
    })
    const { rows } = await exported('counts')
    const ours = rows.filter((row) => row.thing === thing.name).map(({ samples }) => Number(samples))
    expect(ours.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 2100 }, (_, i) => i))
  })

  test('of feedings, losses, clutches and tasks says who did what to which thing', async () => {
    const record = (body: object) => world.ok(full.standIn, 'recordFact', { params: params(), body: body as never })
    await record({
      ...{ kind: 'feeding', subjectId: full.culture.id },
      data: { food: 'concentrate', concentrateId: full.concentrate.id, amountMl: 2.4 },
    })
    await record({
      kind: 'loss',
      subjectId: full.batch.id,
      data: { of: 'larvae', number: 3, cause: 'white, at the bottom' },
    })
    expect((await exported('feedings')).rows.at(-1)).toMatchObject({
      ...{ thing: 'R1', food: 'concentrate', from: 'Green bottle', amount_ml: '2.4', recorded_by: 'Stand-in Sam' },
    })
    expect((await exported('losses')).rows.at(-1)).toMatchObject({
      of: 'larvae',
      number: '3',
      cause: 'white, at the bottom',
    })
    expect((await exported('clutches')).rows).toContainEqual(
      expect.objectContaining({ clutch: full.clutch.name, pair: 'Pair 1', tank: 'Pair tank', eggs: '250' }),
    )
    const tasks = (await exported('tasks')).rows
    expect(tasks.length).toBeGreaterThan(3)
    for (const task of tasks) expect(task.date).toMatch(/^2026-03-\d\d$/)
    // A room that reads gallons gets gallons, under the same columns.
    const inLitres = tasks.filter(({ unit }) => unit === 'L')
    expect(inLitres.length).toBeGreaterThan(0)
    const { prisma } = world.database
    await prisma.room.update({ where: { id: roomId }, data: { units: 'us' } })
    const inGallons = (await exported('tasks')).rows.filter(({ unit }) => unit === 'gal')
    await prisma.room.update({ where: { id: roomId }, data: { units: 'metric' } })
    // The US gallon is 3.785411784 L (NIST Handbook 44, appendix C).
    expect(inGallons.map(({ amount }) => (Number(amount) * 3.785_411_784).toFixed(2))).toEqual(
      inLitres.map(({ amount }) => Number(amount).toFixed(2)),
    )
  })

  test('is for an owner', async () => {
    for (const person of [full.caretaker, full.standIn, full.viewer]) {
      const request = { params: { roomId, what: 'tasks' }, query: { from: today(), to: today() } }
      expect((await send(world, person, 'downloadRecords', request)).problem?.code).toBe('not_allowed')
    }
  })
})

describe("a notebook's counts", () => {
  test('are looked at line by line, kept where they hold, and taken back as one', async () => {
    const [r, batch] = [await make.culture(), await make.batch()]
    const day = minutesFrom(world, -2880).slice(0, 10)
    const text = [
      'Date;Time;Culture;Count;Volume ml;Females;Eggs',
      `${day};7:30;${r.name};60 66;0,5;100;30`,
      `${day};;${batch.name.toUpperCase()};180;;;`,
      `${day};7:30;Nobody;60;1;;`,
      `31.02.2026;7:30;${r.name};60;1;;`,
      `${day};7:30;${r.name};6.5;1;;`,
      `${day};8:30;${r.name};60;;;`,
      `2099-01-01;8:30;${r.name};60;1;;`,
      `${day};07:30;${r.name};60 66;0,5;100;30`,
    ].join('\r\n')
    const { lines, good } = await preview(text)
    expect(good).toBe(2)
    expect(lines.map(({ problem }) => problem)).toEqual([
      ...[null, null],
      expect.stringContaining('Nothing in this room is called "Nobody"'),
      expect.stringContaining('"31.02.2026" is no date'),
      expect.stringContaining('Write whole numbers'),
      expect.stringContaining('how many mL'),
      expect.stringContaining('still to come'),
      expect.stringContaining('there already'),
    ])
    expect(await countsOf(r.id)).toEqual([])
    const made = await importing(text)
    expect(made.body).toMatchObject({ kept: 2, lines })
    expect(await countsOf(r.id)).toMatchObject([
      { at: `${day}T07:30:00.000Z`, data: { of: 'culture', animals: [60, 66], volumeMl: 0.5, eggs: 30, females: 100 } },
    ])
    expect(await countsOf(batch.id)).toMatchObject([{ data: { of: 'larvae', animals: [180] } }])
    expect((await newestAudit()).action).toBe('counts.import')
    // The same file again adds nothing.
    expect((await importing(text)).problem?.code).toBe('invalid_input')
    const undo = () =>
      world.call(full.caretaker, 'undoImport', { params: { roomId, importId: made.body.id }, body: {} })
    expect((await undo()).body).toEqual({ struck: 2 })
    expect(await countsOf(r.id)).toEqual([])
    expect((await undo()).problem?.code).toBe('wrong_state')
    expect((await importing(text)).body).toMatchObject({ kept: 2 })
  })

  test('are of the newest thing of a name, whichever of them was changed last', async () => {
    const old = await make.culture({ startedAt: minutesFrom(world, -2880) })
    const end = { reason: 'crashed', cause: 'crashed' as const, version: old.version }
    await world.ok(full.caretaker, 'endCulture', { params: { roomId, cultureId: old.id }, body: end })
    const young = await make.culture({ name: old.name, startedAt: minutesFrom(world, -1440) })
    // The database now reads so few rows as they lie, and one that was changed lies behind the others.
    await world.database.pool.query('UPDATE subject SET note = $2 WHERE id = $1', [old.id, 'smelled of eggs'])
    await world.database.pool.query('ANALYZE subject')
    await importing(`date,time,thing,samples,volume_ml\n${today()},07:10,${old.name},60,1`)
    expect([await countsOf(old.id), await countsOf(young.id)]).toMatchObject([[], [{ data: { animals: [60] } }]])
  })

  test('come back in as they went out', async () => {
    const other = await make.culture()
    await world.ok(full.caretaker, 'recordFact', {
      params: params(),
      body: { kind: 'count', subjectId: other.id, data: { of: 'culture', animals: [44], volumeMl: 1, dilution: 3 } },
    })
    const before = await countsOf(other.id)
    // A count stands by the second; a file says no seconds.
    const at = minutesFrom(world, -1).replace(/\d\d\.\d+Z$/, '23.456Z')
    await world.ok(full.caretaker, 'recordFact', {
      params: params(),
      body: { kind: 'count', at, subjectId: other.id, data: { of: 'culture', animals: [45], volumeMl: 1 } },
    })
    const { text } = await exported('counts', { from: today() })
    await world.ok(full.caretaker, 'strikeFact', {
      params: { roomId, factId: before[0]!.id },
      body: { reason: 'for a test' },
    })
    const { lines } = await preview(text)
    expect(lines.filter(({ problem }) => problem === null).map(({ thing }) => thing)).toEqual([other.name])
    expect((await importing(text)).body.kept).toBe(1)
    const [again] = (await countsOf(other.id)).filter(({ data }) => 'dilution' in data && data.dilution === 3)
    expect(again).toMatchObject({ data: before[0]!.data, at: before[0]!.at.slice(0, 16).concat(':00.000Z') })
  })

  test.each([
    ['no columns', 'R1,60,1', 'The first line names the columns'],
    ['a broken quote', 'date,thing,samples\n"2026-03-01,R1,60', 'cannot be read'],
  ])('in a file with %s are refused with what to do', async (_what, text, said) => {
    expect((await importing(text)).problem?.fields?.[0]?.message).toContain(said)
  })
})
