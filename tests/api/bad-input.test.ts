import { errorCodes, json, type RouteId } from '@fryward/shared'
import fc from 'fast-check'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openWorld, type World } from '../support/world.ts'
import { fingerprintOf } from './fingerprint.ts'
import { type FullRoom, minutesFrom, openFullRoom } from './full-room.ts'
import { type JsonSchema, type OpenApi, operationOf, readOpenApi, resolved } from './open-api.ts'
import { type RawAnswer, type RawRequest, routeIds, routeOf, send } from './send.ts'
import { validRequest } from './valid-requests/index.ts'
import { violationsOf } from './violations.ts'

let world: World
let full: FullRoom
let neighbour: FullRoom
let document: OpenApi
let serial = 0
let observationId: string
// Each valid request leaves something that every later list is worked out for: a room that had them all would be slow.
const requestsOfARoom = 40
let movedInAt = 0

/** A room that no request has been made in. */
async function moveIn(): Promise<void> {
  movedInAt = serial
  unused = undefined
  full = await openFullRoom(world)
  const seen = await world.ok(full.owner, 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'observation', subjectId: full.pair.id, data: { signs: ['all_well'] } },
  })
  observationId = seen.id
}

beforeAll(async () => {
  world = await openWorld()
  neighbour = await openFullRoom(world, { name: 'Next door' })
  document = await readOpenApi(world)
  await moveIn()
})
beforeEach(async () => {
  if (serial - movedInAt > requestsOfARoom) await moveIn()
})
afterAll(() => world.close())

const writes = routeIds.filter((id) => routeOf(id).method !== 'GET')
const withBody = writes.filter((id) => routeOf(id).kind === 'json' && routeOf(id).takes.includes(json))
const uploads = writes.filter((id) => routeOf(id).kind === 'bytes')
const isAskedAbout = (id: RouteId) => withBody.includes(id) || uploads.includes(id) || routeOf(id).path.includes(':')
// These are slowed down after 20 tries a minute from one address; each test below asks from an address of its own.
let lastAddress = 0
const fresh = () => {
  lastAddress += 1
  return `10.0.${Math.floor(lastAddress / 250)}.${(lastAddress % 250) + 1}`
}

/** What is refused uses nothing up: one request does for all that goes wrong with a route in a row. */
let unused: { id: RouteId; request: RawRequest } | undefined
async function valid(id: RouteId): Promise<RawRequest> {
  if (unused?.id === id) return unused.request
  serial += 1
  const request = await validRequest(id, { world, full, as: full.owner, serial })
  unused = { id, request }
  return request
}

/** Problem details with a code of the closed list, its status, and a sentence. */
function expectProblem(answer: RawAnswer, said: string): void {
  expect(answer.problem, `${said} was accepted: ${answer.text.slice(0, 300)}`).not.toBeNull()
  const problem = answer.problem!
  expect(answer.status, `${said}: ${answer.text}`).toBeLessThan(500)
  expect(answer.contentType).toMatch(/^application\/problem\+json/)
  expect(errorCodes[problem.code]).toBe(answer.status)
  expect(problem.status).toBe(answer.status)
  expect(problem.detail, said).toMatch(/^\S.{10,}[.?]$/su)
  for (const field of problem.fields ?? []) expect(field.message.length, said).toBeGreaterThan(3)
}

/** Everything in `asks` is refused, and the room is afterwards what it was before. */
async function expectRefusals(asks: { said: string; ask: () => Promise<RawAnswer> }[]): Promise<void> {
  const before = await fingerprintOf(world, full.roomId)
  for (const { said, ask } of asks) expectProblem(await ask(), said)
  expect(await fingerprintOf(world, full.roomId)).toEqual(before)
}

const bodySchema = (id: RouteId): JsonSchema => {
  const schema = operationOf(document, id).requestBody?.content?.['application/json']?.schema
  if (!schema) throw new Error(`The description of ${id} has no body`)
  return resolved(document, schema)
}

const ask = (id: RouteId, request: RawRequest) =>
  // A mutilated sign-out that is none would end the owner's session.
  send(world, routeOf(id).permission === 'anyone' ? null : full.owner, id, {
    ...request,
    remoteAddress: fresh(),
    headers: { 'idempotency-key': `bad-input-${lastAddress}`, ...request.headers },
  })

test('a field outside its limits is answered with what to give instead', async () => {
  const body = { name: 'Sump', kind: 'storage', volumeL: -1, temperatureC: 41, salinity: 33, note: 7 }
  const answer = await ask('createTank', { ...(await valid('createTank')), body })
  expect(answer.problem?.fields).toEqual([
    { path: 'volumeL', message: 'Give a number of more than 0.' },
    { path: 'temperatureC', message: 'Give a number of at most 40.' },
    { path: 'note', message: 'Give a text.' },
  ])
})

// All that is asked of one route stands together: what was made ready for it serves until something of it is accepted.
describe.each(writes.filter(isAskedAbout))('%s', (id) => {
  const hasBody = withBody.includes(id)
  if (hasBody) {
    test('refuses whatever its description rules out', async () => {
      const request = await valid(id)
      const violations = violationsOf(bodySchema(id), request.body)
      expect(violations.length).toBeGreaterThan(3)
      await expectRefusals(
        violations.map(({ where, body }) => ({ said: where, ask: () => ask(id, { ...request, body }) })),
      )
    })

    test('refuses bodies that are no JSON object', async () => {
      const { params } = await valid(id)
      const texts = [
        '',
        '{',
        '{"a":',
        'NaN',
        'undefined',
        '[]',
        'null',
        '"text"',
        '7',
        '{"__proto__":{"a":1}}',
        '\u0000',
      ]
      const deep = `${'['.repeat(200_000)}${']'.repeat(200_000)}`
      const deepInside = `{"name":${'{"a":'.repeat(50_000)}1${'}'.repeat(50_000)}}`
      const large = JSON.stringify({ name: 'x'.repeat(2_000_000) })
      await expectRefusals(
        [...texts, deep, deepInside, large].map((text) => ({
          said: `${text.slice(0, 20)} (${text.length} letters)`,
          ask: () => ask(id, { params, text }),
        })),
      )
    })

    test('refuses other formats', async () => {
      const request = await valid(id)
      const text = JSON.stringify(request.body)
      const types = [
        'text/plain',
        'application/xml',
        'application/x-www-form-urlencoded',
        'multipart/form-data',
        'nonsense',
      ]
      await expectRefusals(
        types.map((type) => ({
          said: type,
          ask: () => ask(id, { params: request.params, text, headers: { 'content-type': type } }),
        })),
      )
    })

    test("refuses another room's things inside the body", async () => {
      const request = await valid(id)
      const text = JSON.stringify(request.body)
      const swaps = ownIds().flatMap((own, index) =>
        text.includes(own) ? [[own, neighbourIds()[index]!] as const] : [],
      )
      await expectRefusals(
        swaps.map(([own, other]) => ({
          said: `${id} with ${other}`,
          ask: () => ask(id, { params: request.params, text: text.replaceAll(own, other) }),
        })),
      )
    })
  }

  if (uploads.includes(id)) {
    test('refuses other formats, none, and bytes that are not what their type says', async () => {
      const request = await valid(id)
      const [type] = routeOf(id).takes
      const data = request.bytes!.data
      const asks = ['text/plain', 'application/json', 'multipart/form-data', 'image/svg+xml', 'nonsense']
        .filter((wrong) => !routeOf(id).takes.includes(wrong))
        .map((wrong) => ({ said: wrong, bytes: { type: wrong, data } }))
      asks.push({ said: 'nothing', bytes: { type: type!, data: Buffer.alloc(0) } })
      asks.push({ said: 'a byte too many', bytes: { type: type!, data: Buffer.alloc(routeOf(id).mostBytes + 1) } })
      asks.push({ said: 'zeroes', bytes: { type: type!, data: Buffer.alloc(5000) } })
      asks.push({ said: 'a half of it', bytes: { type: type!, data: data.subarray(0, data.length / 2) } })
      await expectRefusals(asks.map(({ said, bytes }) => ({ said, ask: () => ask(id, { ...request, bytes }) })))
    })
  }

  if (routeOf(id).path.includes(':')) {
    test("knows nothing of unknown ids and another room's things", async () => {
      const request = await valid(id)
      const asks: { said: string; ask: () => Promise<RawAnswer> }[] = []
      for (const name of Object.keys(request.params ?? {})) {
        const values = [
          'not-an-id',
          '0195f3a0-0000-7000-8000-000000000000',
          '../../me',
          '%00',
          'a'.repeat(300),
          '💥',
          '\ud800',
        ]
        const others = name === 'roomId' ? [neighbour.roomId] : neighbourIds()
        for (const value of [...values.filter((value) => value.isWellFormed()), ...others])
          asks.push({
            said: `${name}=${value}`,
            ask: () => ask(id, { ...request, params: { ...request.params, [name]: value } }),
          })
      }
      await expectRefusals(asks)
    })
  }

  if (hasBody) {
    test('answers any mutilated body properly, and a refused one leaves no trace', async () => {
      await fc.assert(
        fc.asyncProperty(mutilation, async (how) => {
          const request = await valid(id)
          // Dropped whole, there is no body; "no JSON object" above covers that as text.
          const body = mutilated(request.body, how) ?? null
          const before = await fingerprintOf(world, full.roomId)
          const answer = await ask(id, { ...request, body })
          // Some mutilations are fine; `send` has held their answer against the contract.
          if (answer.problem === null) unused = undefined
          if (answer.problem === null) return
          expectProblem(answer, JSON.stringify(body).slice(0, 300))
          expect(await fingerprintOf(world, full.roomId)).toEqual(before)
        }),
        // Another few at each run; `npm run fuzz` sends a hundred thousand.
        { numRuns: 5 },
      )
    })
  }
})

const idsOf = (room: FullRoom): string[] => [
  ...[room.pairTank.id, room.larvalTank.id, room.culture.id, room.concentrate.id, room.pair.id],
  ...[room.clutch.id, room.batch.id, room.feedLink.id, room.roomId],
]
const ownIds = () => idsOf(full)
const neighbourIds = () => idsOf(neighbour)

test('a room moves on only when something was written', async () => {
  // The fingerprint above would prove nothing if it could not change.
  const before = await fingerprintOf(world, full.roomId)
  const seen = await world.ok(full.owner, 'recordFact', {
    params: { roomId: full.roomId },
    body: { kind: 'observation', subjectId: full.pair.id, data: { signs: ['all_well'] } },
  })
  const written = await fingerprintOf(world, full.roomId)
  expect(written).not.toEqual(before)
  await world.ok(full.owner, 'strikeFact', {
    params: { roomId: full.roomId, factId: seen.id },
    body: { reason: 'proof that marks show' },
  })
  expect(await fingerprintOf(world, full.roomId)).not.toEqual(written)
})

test('facts that the schema allows and the room does not are refused', async () => {
  const { culture, pair, batch, clutch, pairTank } = full
  const record = (body: object) => () => ask('recordFact', { params: { roomId: full.roomId }, body })
  const count = { of: 'culture', animals: [60], volumeMl: 1 }
  await expectRefusals([
    {
      said: 'a count tomorrow',
      ask: record({ kind: 'count', subjectId: culture.id, at: minutesFrom(world, 1440), data: count }),
    },
    {
      said: 'a count without its volume',
      ask: record({ kind: 'count', subjectId: culture.id, data: { of: 'culture', animals: [3] } }),
    },
    { said: 'a count of a pair', ask: record({ kind: 'count', subjectId: pair.id, data: count }) },
    {
      said: 'more than the vessel holds',
      ask: record({
        kind: 'harvest',
        subjectId: culture.id,
        data: { volumeL: 19, parts: [{ to: 'drain', volumeL: 19 }] },
      }),
    },
    {
      said: 'a harvest of a tank',
      ask: record({
        kind: 'harvest',
        subjectId: pairTank.id,
        data: { volumeL: 1, parts: [{ to: 'drain', volumeL: 1 }] },
      }),
    },
    {
      said: 'parts that do not add up',
      ask: record({
        kind: 'harvest',
        subjectId: culture.id,
        data: { volumeL: 2, parts: [{ to: 'drain', volumeL: 1 }] },
      }),
    },
    {
      said: 'a part for a batch that is a clutch',
      ask: record({
        kind: 'harvest',
        subjectId: culture.id,
        data: { volumeL: 1, parts: [{ to: 'larval_batch', subjectId: clutch.id, volumeL: 1 }] },
      }),
    },
    { said: 'a water test of nothing', ask: record({ kind: 'water_test', subjectId: pairTank.id, data: {} }) },
    {
      said: 'a water change of nothing',
      ask: record({ kind: 'water_change', subjectId: pairTank.id, data: { removedL: 0, addedL: 0 } }),
    },
    {
      said: 'a water change larger than the tank',
      ask: record({ kind: 'water_change', subjectId: pairTank.id, data: { removedL: 81, addedL: 81 } }),
    },
    { said: 'an observation of nothing', ask: record({ kind: 'observation', subjectId: pair.id, data: {} }) },
    {
      said: 'a transfer to nowhere',
      ask: record({ kind: 'transfer', subjectId: batch.id, data: { number: 3, toSubjectId: observationId } }),
    },
  ])
})

describe.each(routeIds.filter((id) => routeOf(id).method === 'GET'))('%s', (id) => {
  test('refuses wrong queries', async () => {
    const request = await valid(id)
    const parameters = (operationOf(document, id).parameters ?? []).filter((parameter) => parameter.in === 'query')
    const asks = [{ said: 'an unknown parameter', query: { unheardOf: '1' } as Record<string, string> }]
    for (const { name, schema } of parameters)
      for (const value of [
        '',
        'abc',
        '-1',
        '1e308',
        'NaN',
        'null',
        '\u0000',
        schema.type === 'string' ? '9' : '1.234,5',
      ])
        asks.push({ said: `${name}=${value}`, query: { [name]: value } })
    await expectRefusals(
      asks.map(({ said, query }) => ({
        said,
        ask: () => send(world, full.owner, id, { params: request.params, query, remoteAddress: fresh() }),
      })),
    )
  })
})

test.each([
  '/api/v1/rooms/%ZZ',
  '/api/v1/%',
  '/api/v1/rooms/%E0%A4%A/tanks',
  `/api/v1/rooms/${'a'.repeat(5000)}`,
  '/api/v1//',
  '/nothing',
])('the address %s is answered with problem details', async (url) => {
  for (const method of ['GET', 'POST', 'PUT', 'DELETE', 'OPTIONS'] as const) {
    const answer = await world.app.inject({
      method,
      url,
      headers: { host: 'localhost:3000', cookie: full.owner.cookie },
    })
    expect(answer.headers['content-type'], answer.body).toMatch(/^application\/problem\+json/)
    expect(answer.statusCode).toBeGreaterThanOrEqual(400)
    expect(answer.statusCode).toBeLessThan(500)
  }
})

test.each(['short', 'with spaces in it', 'x'.repeat(129), 'ümläut-key-here'])(
  'the Idempotency-Key "%s" is refused',
  async (key) => {
    await expectRefusals([
      {
        said: key,
        ask: async () => {
          const request = await valid('recordFact')
          return send(world, full.owner, 'recordFact', { ...request, headers: { 'idempotency-key': key } })
        },
      },
    ])
  },
)

const nasty: unknown[] = [
  ...[null, true, 0, -1, -0.5, 1e-300, 400, 1e9, 1e308, 2 ** 53, Number.NaN, '', ' ', 'x', 'x'.repeat(100_000)],
  ...['\u0000', '\ud800', '‮', '0000-01-01', '9999-12-31', '2026-02-30', '0000-01-01T00:00:00.000Z'],
  ...['2001-01-01T00:00:00.000Z', '2100-12-31T23:59:59.999Z', '2100-12-31', '0195f3a0-0000-7000-8000-000000000000'],
  ...[[], {}, [[]], [null], { length: 5 }, { toString: 'x' }, { constructor: null }, Array(300).fill(0)],
]
const mutilation = fc.record({
  place: fc.nat(1000),
  act: fc.constantFrom('replace', 'replace', 'replace', 'drop', 'add', 'wrap'),
  value: fc.oneof(fc.constantFrom(...nasty), fc.jsonValue(), fc.double()),
  key: fc.oneof(fc.constantFrom('constructor', 'toString', 'length', 'id', 'roomId'), fc.string()),
})
type Mutilation = { place: number; act: string; value: unknown; key: string }

/** A copy of a body with one place in it replaced, dropped, added to or wrapped. */
function mutilated(body: unknown, how: Mutilation): unknown {
  const places = placesOf(body)
  const path = places[how.place % places.length]!
  return changedAt(body, path, (value) => {
    if (how.act === 'add' && value !== null && typeof value === 'object' && !Array.isArray(value))
      return { ...value, [how.key]: how.value }
    if (how.act === 'wrap') return [value]
    if (how.act === 'drop') return undefined
    return how.value
  })
}

function placesOf(value: unknown, path: string[] = []): string[][] {
  if (value === null || typeof value !== 'object') return [path]
  return [path, ...Object.entries(value).flatMap(([key, inner]) => placesOf(inner, [...path, key]))]
}

function changedAt(value: unknown, [key, ...rest]: string[], change: (value: unknown) => unknown): unknown {
  if (key === undefined) return change(value)
  if (Array.isArray(value))
    return value.map((inner, index) => (String(index) === key ? changedAt(inner, rest, change) : inner))
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(
    Object.entries(value).map(([name, inner]) => [name, name === key ? changedAt(inner, rest, change) : inner]),
  )
}
