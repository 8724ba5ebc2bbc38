import { prepareClaim } from '@fryward/room'
import { json, type NewFact, type RouteId, routes, takesRepeatKey } from '@fryward/shared'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openWorld, type Person, type World } from '../support/world.ts'
import { type FullRoom, openFullRoom, tasksOf } from './full-room.ts'
import { type OpenApi, operationOf, readOpenApi, resolved } from './open-api.ts'
import { plausibleValues } from './plausible-values.ts'
import { routeIds, routeOf, send } from './send.ts'
import { validRequest } from './valid-requests/index.ts'

let world: World
let full: FullRoom
let document: OpenApi
let serial = 0
const repeatKey = '#/components/parameters/IdempotencyKey'

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  document = await readOpenApi(world)
  // Sign-offs, changes and a worry, so that no list of the contract stays empty.
  for (const task of (await tasksOf(world, full.owner, full.roomId)).slice(0, 4))
    if (task.state === 'open')
      await world.ok(full.caretaker, 'signOffTask', {
        params: { roomId: full.roomId, taskId: task.id },
        body: { values: plausibleValues(task), confirmed: task.fields.map((field) => field.name) },
      })
  await world.ok(full.owner, 'recordFact', {
    params: { roomId: full.roomId },
    body: {
      kind: 'harvest',
      subjectId: full.culture.id,
      data: { volumeL: 2, parts: [{ to: 'drain', volumeL: 2 }] },
    },
  })
  const { batch, culture, larvalTank } = full
  for (const body of [
    { kind: 'feeding', subjectId: batch.id, data: { food: 'rotifers', fromCultureId: culture.id, amountMl: 200 } },
    { kind: 'loss', subjectId: batch.id, data: { number: 3, of: 'larvae', cause: 'thin' } },
    { kind: 'count', subjectId: batch.id, data: { of: 'larvae', animals: [150], dilution: 1 } },
    { kind: 'water_test', subjectId: larvalTank.id, data: { temperatureC: 26.8 } },
  ] satisfies NewFact[])
    await world.ok(full.owner, 'recordFact', { params: { roomId: full.roomId }, body })
  await world.ok(full.owner, 'writeNote', {
    params: { roomId: full.roomId },
    body: { text: 'the heater hums', isWorry: true },
  })
  for (const id of [
    'writeNote',
    'createInvitation',
    'createJuvenileGroup',
    'changeRule',
    'recordFact',
    'acknowledgeAlarm',
  ] as const) {
    serial += 1
    await send(world, full.owner, id, await validRequest(id, { world, full, as: full.owner, serial }))
  }
})
afterAll(() => world.close())

describe('the description', () => {
  test('is OpenAPI 3.1 and describes every route of the table, once', () => {
    expect(document.openapi).toMatch(/^3\.1\.\d+$/)
    expect(document.info).toMatchObject({ title: 'Fryward', version: 'test' })
    const described = Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, { operationId }]) => `${method.toUpperCase()} ${path} ${operationId}`),
    )
    const table = Object.entries(routes).map(
      ([id, route]) => `${route.method} ${route.base}${route.path.replace(/:(\w+)/g, '{$1}')} ${id}`,
    )
    expect(described.sort()).toEqual(table.sort())
  })

  test('resolves every reference, and its components are all objects with a type', () => {
    const refs = new Set<string>()
    JSON.stringify(document, (key, value: unknown) => {
      if (key === '$ref' && typeof value === 'string') refs.add(value)
      return value
    })
    expect(refs.size).toBeGreaterThan(10)
    for (const ref of refs) {
      if (ref === repeatKey) continue
      expect(ref).toMatch(/^#\/components\/schemas\/\w+$/)
      expect(resolved(document, { $ref: ref })).toBeTypeOf('object')
    }
  })

  test('names every part of a path, and no other', () => {
    for (const id of routeIds) {
      const named = [...routeOf(id).path.matchAll(/:(\w+)/g)].map(([, name]) => name)
      const parameters = operationOf(document, id).parameters ?? []
      const inPath = parameters.filter((parameter) => parameter.in === 'path')
      expect(inPath.map((parameter) => parameter.name).sort()).toEqual(named.sort())
      expect(inPath.every((parameter) => parameter.required)).toBe(true)
    }
  })

  test('says of every route what it answers, what is refused, and who must be signed in', () => {
    for (const id of routeIds) {
      const operation = operationOf(document, id)
      const route = routeOf(id)
      expect(operation.summary).toBe(route.summary)
      expect(Object.keys(operation.responses[String(route.status)]?.content ?? {}), id).toEqual([route.gives])
      for (const refused of ['4XX', '5XX'])
        expect(operation.responses[refused]?.content?.['application/problem+json']?.schema, id).toEqual({
          $ref: '#/components/schemas/Problem',
        })
      expect(operation.security ?? [], id).toEqual(
        route.permission === 'anyone' ? [] : [{ [route.permission === 'device' ? 'device' : 'session']: [] }],
      )
      expect(Object.keys(operation.requestBody?.content ?? {}), id).toEqual(route.takes)
    }
    expect(document.components.securitySchemes).toHaveProperty('session')
    expect(document.components.securitySchemes).toHaveProperty('device')
  })

  test('says the repeat key once, and names it for every write by somebody who is signed in', () => {
    const { IdempotencyKey: key } = document.components.parameters
    expect(key).toMatchObject({
      in: 'header',
      name: 'Idempotency-Key',
      required: false,
      description: expect.stringContaining('30 days'),
    })
    for (const id of routeIds) {
      const named = (operationOf(document, id).parameters ?? []).filter(({ $ref }) => $ref === repeatKey)
      expect(named.length, id).toBe(takesRepeatKey(routeOf(id)) ? 1 : 0)
    }
    const pattern = new RegExp(key!.schema.pattern!)
    expect(['a8f0-77aa', 'x'.repeat(128)].every((each) => pattern.test(each))).toBe(true)
    expect(
      ['short', 'with a space in it', 'x'.repeat(129), 'größer als ASCII'].some((each) => pattern.test(each)),
    ).toBe(false)
  })

  test('holds each schema once, and none that nothing uses', () => {
    const { schemas } = document.components
    const said = JSON.stringify([document.paths, schemas])
    for (const [name, schema] of Object.entries(schemas)) {
      expect(said, name).toContain(`"#/components/schemas/${name}"`)
      if (name.endsWith('Input')) expect(schema, name).not.toEqual(schemas[name.replace(/Input$/, '')])
    }
  })
})

test('the lists that are held against their schemas below are not empty', async () => {
  const seen = new Map<string, boolean>()
  const isList = (id: RouteId) =>
    routeOf(id).method === 'GET' && routeOf(id).kind === 'json' && !id.startsWith('getTask')
  for (const id of routeIds.filter(isList)) {
    const { text } = await send(world, full.owner, id, await validRequest(id, { world, full, as: full.owner, serial }))
    JSON.parse(text, (key, value: unknown) => {
      // An item of a list has its index for a key.
      if (Array.isArray(value) && !/^\d+$/.test(key)) {
        const name = `${id}.${key}`
        seen.set(name, (seen.get(name) ?? false) || value.length > 0)
      }
      return value
    })
  }
  const empty = [...seen].filter(([, isFilled]) => !isFilled).map(([name]) => name)
  // Nothing is wrong in this room, nothing is near hatching, nobody took a photo, this is no demo, no rule lacks anything, no title of
  // this day names where its amount goes, and no eggs float.
  const quiet = [
    'getDay.gaps',
    'getDay.to',
    'getHandOver.signs',
    'getHandOver.coming',
    'getHandOver.to',
    'listPairs.eggLookLacks',
    'listPhotos.',
    'listLooks.',
    'getServer.demoPeople',
    'getServerState.troubles',
  ]
  expect(empty.filter((name) => !quiet.includes(name))).toEqual([])
  expect(seen.size).toBeGreaterThan(25)
})

// Whoever claims the server owns it from then on.
const inOrder = [...routeIds.filter((id) => id !== 'claimServer'), 'claimServer'] as const

describe.each(inOrder)('%s', (id) => {
  test('answers exactly the fields of its schema', async () => {
    serial += 1
    const as = await senderOf(id)
    const request = await validRequest(id, { world, full, as, serial })
    if (id === 'claimServer') request.body = { ...Object(request.body), code: await freshClaimCode() }
    const answer = await send(world, as, id, request)
    expect(answer.status, answer.text).toBe(routeOf(id).status)
    if (routeOf(id).gives === json) expect(answer.json).toStrictEqual(routeOf(id).response.parse(answer.json))
  })
})

/** Whoever is in the room already cannot join it, and what is about a session or a membership may end the owner's. */
async function senderOf(id: RouteId): Promise<Person> {
  if (id === 'leaveRoom') return world.person(`Guest ${serial}`, { roomId: full.roomId, role: 'caretaker' })
  if (routeOf(id).permission === 'own_server') return full.owner
  if (id === 'acceptInvitation' || routeOf(id).tag === 'account' || routeOf(id).permission === 'anyone')
    return world.person(`Guest ${serial}`)
  return full.owner
}

/** The server as it was before anybody claimed it. */
async function freshClaimCode(): Promise<string> {
  await world.database.prisma.server.update({ where: { id: 1 }, data: { claimedAt: null } })
  const code = await prepareClaim({
    ctx: { database: world.database, actor: { kind: 'system', job: 'claim' }, now: world.clock.now() },
    kept: null,
  })
  return String(code)
}
