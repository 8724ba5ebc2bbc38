import { permissionsOfRole, type Role, type RouteId, routes } from '@fryward/shared'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { openRoom, openWorld, type Person, type World } from '../support/world.ts'
import { type FullRoom, openFullRoom } from './full-room.ts'
import { type RawRequest, routeIds, routeOf, send } from './send.ts'
import { validRequest } from './valid-requests/index.ts'

let world: World
let full: FullRoom
let neighbour: Person
let serial = 0
// Each valid request leaves something that every later list is worked out for: a room that had them all would be slow.
const requestsOfARoom = 40
let movedInAt = 0

async function moveIn(): Promise<void> {
  movedInAt = serial
  unused = undefined
  full = await openFullRoom(world)
}

beforeAll(async () => {
  world = await openWorld()
  neighbour = (await openRoom(world, { name: 'Next door' })).owner
  await moveIn()
})
beforeEach(async () => {
  if (serial - movedInAt > requestsOfARoom) await moveIn()
})
afterAll(() => world.close())

const revision = async () =>
  (await world.database.prisma.room.findUniqueOrThrow({ where: { id: full.roomId } })).revision

/** What is refused uses nothing up: one request does for all who may not. */
let unused: { id: RouteId; request: RawRequest } | undefined
async function refusedRequest(id: RouteId): Promise<RawRequest> {
  if (unused?.id !== id) unused = { id, request: await freshRequest(id, full.owner) }
  return unused.request
}

function freshRequest(id: RouteId, as: Person): Promise<RawRequest> {
  serial += 1
  return validRequest(id, { world, full, as, serial })
}

/** Sends a valid request and tells how far the room moved on. */
async function ask(person: Person | null, id: RouteId, { isRefused = false }: { isRefused?: boolean } = {}) {
  const request = isRefused ? await refusedRequest(id) : await freshRequest(id, person ?? full.owner)
  const before = await revision()
  // A stranger brings no token of a device.
  const isTokens = person === null && routeOf(id).permission === 'device'
  const answer = await send(world, person, id, isTokens ? { ...request, headers: {} } : request)
  return { answer, moved: (await revision()) - before }
}

const isInRoom = (id: RouteId) => routeOf(id).path.startsWith('/rooms/:roomId')
const roomRoutes = routeIds.filter(isInRoom)
const outside = routeIds.filter((id) => !isInRoom(id))
const peopleByRole = (): Record<Role, Person> => ({
  viewer: full.viewer,
  stand_in: full.standIn,
  caretaker: full.caretaker,
  owner: full.owner,
})

describe.each(roomRoutes)('%s', (id) => {
  test('asks a stranger to sign in', async () => {
    const { answer, moved } = await ask(null, id, { isRefused: true })
    expect([answer.status, answer.problem?.code, moved]).toEqual([401, 'not_signed_in', 0])
  })

  test("tells another room's owner that there is no such room", async () => {
    const { answer, moved } = await ask(neighbour, id, { isRefused: true })
    expect([answer.status, answer.problem?.code, moved]).toEqual([404, 'not_found', 0])
    expect(answer.text).not.toContain(full.room.name)
  })

  test.each(['viewer', 'stand_in', 'caretaker', 'owner'] as const)('is for a %s as the table says', async (role) => {
    const allowed: readonly string[] = permissionsOfRole[role]
    const isAllowed = allowed.includes(routeOf(id).permission)
    const { answer, moved } = await ask(peopleByRole()[role], id, { isRefused: !isAllowed })
    if (isAllowed) {
      expect(answer.status, answer.text).toBe(routeOf(id).status)
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

test('every route of the table is registered, and nothing else but its description', () => {
  const table = Object.values(routes).map((route) => `${route.method} ${route.base}${route.path}`)
  expect(registeredRoutes().sort()).toEqual([...table, 'GET /api/v1/openapi.json'].sort())
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

test('the backup of everything is for the owner of the server alone', async () => {
  // The last room that was opened claimed the server for its owner.
  const { owner } = await openRoom(world, { name: 'The last' })
  const statusFor = async (person: Person) => (await send(world, person, 'downloadBackup', {})).status
  for (const person of [full.viewer, full.standIn, full.caretaker, full.owner])
    expect(await statusFor(person)).toBe(403)
  expect(await statusFor(owner)).toBe(200)
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
    for (const method of methods.split(', ')) if (method !== 'HEAD') found.push(`${method} ${prefixes.join('')}`)
  }
  return found
}
