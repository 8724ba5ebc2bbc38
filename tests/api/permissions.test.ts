import {
  backupPath,
  eventsPath,
  permissionsOfRole,
  photoFilePath,
  photosPath,
  type Role,
  type RouteId,
  routes,
} from '@fryward/shared'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { routeIds, routeOf, send } from './send.ts'
import { validRequest } from './valid-requests.ts'

let world: World
let full: FullRoom
let neighbour: Person
let serial = 0

beforeAll(async () => {
  world = await openWorld()
  full = await openFullRoom(world)
  neighbour = (await openRoom(world, { name: 'Next door' })).owner
})
afterAll(() => world.close())

const revision = async () =>
  (await world.database.prisma.room.findUniqueOrThrow({ where: { id: full.roomId } })).revision

/** Sends a valid request and tells how far the room moved on. */
async function ask(person: Person | null, id: RouteId) {
  serial += 1
  const request = await validRequest(id, { world, full, as: person ?? full.owner, serial })
  const before = await revision()
  const answer = await send(world, person, id, request)
  return { answer, moved: (await revision()) - before }
}

const isInRoom = (id: RouteId) => routeOf(id).path.startsWith('/rooms/:roomId')
// What ends or removes things comes last, so that the rest finds them there.
const inOrder = [...routeIds].sort((a, b) => Number(a.startsWith('end')) - Number(b.startsWith('end')))
const roomRoutes = inOrder.filter(isInRoom)
const outside = inOrder.filter((id) => !isInRoom(id))
const peopleByRole = (): Record<Role, Person> => ({
  viewer: full.viewer,
  stand_in: full.standIn,
  caretaker: full.caretaker,
  owner: full.owner,
})

describe.each(roomRoutes)('%s', (id) => {
  test('asks a stranger to sign in', async () => {
    const { answer, moved } = await ask(null, id)
    expect([answer.status, answer.problem?.code, moved]).toEqual([401, 'not_signed_in', 0])
  })

  test("tells another room's owner that there is no such room", async () => {
    const { answer, moved } = await ask(neighbour, id)
    expect([answer.status, answer.problem?.code, moved]).toEqual([404, 'not_found', 0])
    expect(answer.text).not.toContain(full.room.name)
  })

  test.each(['viewer', 'stand_in', 'caretaker', 'owner'] as const)('is for a %s as the table says', async (role) => {
    const allowed: readonly string[] = permissionsOfRole[role]
    const { answer, moved } = await ask(peopleByRole()[role], id)
    if (allowed.includes(routeOf(id).permission)) {
      // A thing that an earlier role has ended, signed off or skipped is a conflict, which only the permitted get to see.
      expect(answer.status < 300 || answer.status === 409, `${answer.status}: ${answer.text}`).toBe(true)
    } else {
      expect([answer.status, answer.problem?.code, moved]).toEqual([403, 'not_allowed', 0])
    }
  })
})

describe.each(outside)('%s', (id) => {
  const { permission } = routeOf(id)
  test(permission === 'anyone' ? 'answers a stranger' : 'asks a stranger to sign in', async () => {
    const { answer } = await ask(null, id)
    if (permission === 'anyone') expect([401, 403, 404]).not.toContain(answer.status)
    else expect([answer.status, answer.problem?.code]).toEqual([401, 'not_signed_in'])
  })
})

test('every route of the table is registered, and nothing else but the listed extras', () => {
  const extras = [
    'GET /api/v1/openapi.json',
    `GET /api/v1${eventsPath}`,
    `POST /api/v1${photosPath}`,
    `GET /api/v1${photoFilePath}`,
    `GET /api/v1${backupPath}`,
    'GET /api/auth/*',
    'POST /api/auth/*',
  ]
  const table = Object.values(routes).map((route) => `${route.method} /api/v1${route.path}`)
  expect(registeredRoutes().sort()).toEqual([...table, ...extras].sort())
  expect(new Set(table).size).toBe(Object.keys(routes).length)
})

test('HEAD is answered like GET: a stranger learns nothing from it either', async () => {
  const answer = await world.app.inject({
    method: 'HEAD',
    url: `/api/v1/rooms/${full.roomId}`,
    headers: { host: 'localhost:3000' },
  })
  expect(answer.statusCode).toBe(401)
})

test('the events of a room are for its people', async () => {
  const url = `/api/v1/rooms/${full.roomId}/events`
  const ask = (cookie?: string) =>
    world.app.inject({ url, headers: { host: 'localhost:3000', ...(cookie ? { cookie } : {}) } })
  expect((await ask()).statusCode).toBe(401)
  expect((await ask(neighbour.cookie)).statusCode).toBe(404)
})

test('photos go to the people of a room, and come from those who may record', async () => {
  const send = (method: 'GET' | 'POST', path: string, person: Person | null) =>
    world.app.inject({
      method,
      url: `/api/v1/rooms/${full.roomId}/photos${path}`,
      headers: {
        host: 'localhost:3000',
        ...(method === 'POST' ? { 'content-type': 'image/png' } : {}),
        ...(person ? { cookie: person.cookie } : {}),
      },
      ...(method === 'POST' ? { payload: Buffer.from('not a picture') } : {}),
    })
  const statuses = async (method: 'GET' | 'POST', path: string) =>
    Promise.all([null, neighbour, full.viewer].map(async (person) => (await send(method, path, person)).statusCode))
  expect(await statuses('POST', `?subjectId=${full.pair.id}`)).toEqual([401, 404, 403])
  const { params } = await validRequest('strikePhoto', { world, full, as: full.owner, serial })
  // The world keeps no files: whoever may see the photo is told so.
  expect(await statuses('GET', `/${params?.photoId}/full`)).toEqual([401, 404, 503])
})

test('the backup of everything is for the owner of the server alone', async () => {
  const ask = (person: Person | null) =>
    world.app.inject({
      url: `/api/v1${backupPath}`,
      headers: { host: 'localhost:3000', ...(person ? { cookie: person.cookie } : {}) },
    })
  expect((await ask(null)).statusCode).toBe(401)
  for (const person of [full.viewer, full.standIn, full.caretaker, full.owner])
    expect((await ask(person)).statusCode).toBe(403)
  // The last room that was opened claimed the server for its owner.
  expect((await ask(neighbour)).statusCode).toBe(200)
})

test('the description of the API is for anyone', async () => {
  const answer = await world.app.inject({ url: '/api/v1/openapi.json', headers: { host: 'localhost:3000' } })
  expect(answer.statusCode).toBe(200)
})

test('a new room is set up by an owner, not by whoever is signed in', async () => {
  expect((await ask(full.viewer, 'createRoom')).answer.problem?.code).toBe('not_allowed')
  expect((await ask(full.owner, 'createRoom')).answer.status).toBe(201)
})

/** Method and path of every route that the server holds, read from its own drawing of them. */
function registeredRoutes(): string[] {
  const found: string[] = []
  const prefixes: string[] = []
  for (const line of world.app.printRoutes({ commonPrefix: false }).split('\n')) {
    const match = /^((?:│ {3}| {4})*)(?:├── |└── )(.*?) \(([A-Z, ]+)\)$/u.exec(line)
    if (!match) continue
    const [, indent = '', segment = '', methods = ''] = match
    const depth = indent.length / 4
    prefixes.splice(depth)
    prefixes[depth] = segment
    const path = prefixes.join('')
    // The drawing leaves out the prefix of a lone wildcard.
    const full = path === '*' ? '/api/auth/*' : path
    for (const method of methods.split(', ')) if (method !== 'HEAD') found.push(`${method} ${full}`)
  }
  return found
}
