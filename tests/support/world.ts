import { createHmac, randomUUID } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApi } from '@fryward/api'
import type { Context } from '@fryward/room'
import {
  addressOf,
  type BodyInputOf,
  type JsonRouteId,
  type ParamsOf,
  type Problem,
  ProblemSchema,
  type ResponseOf,
  type Role,
  type Room,
  routes,
} from '@fryward/shared'
import { type Database, openDatabase } from '@fryward/store'
import type { FastifyInstance } from 'fastify'
import { createTestDatabase } from './database.ts'

const authSecret = 'a secret for tests only, long enough for the schema'

export type Person = { userId: string; name: string; email: string; cookie: string }
export type Clock = { now: () => string; set: (at: string) => void; advanceMinutes: (minutes: number) => void }

type Parts<K extends JsonRouteId> = {
  params?: Partial<ParamsOf<K>> & Record<string, string>
  query?: Record<string, string | number>
  body?: BodyInputOf<K>
  key?: string
  /** The address it comes from; one and the same without it. */
  address?: string
}
export type Answer<K extends JsonRouteId> = {
  status: number
  body: ResponseOf<K>
  problem: Problem | null
  headers: Record<string, unknown>
}

/** A server over a database of its own, with a clock that only the test moves. */
export type World = {
  app: FastifyInstance
  database: Database
  clock: Clock
  photosFolder: string
  /** Somebody with an account and a session, in the room with a role when both are given. */
  person: (name: string, membership?: { roomId: string; role: Role }) => Promise<Person>
  /** One request; its answer is held against the contract. */
  call: <K extends JsonRouteId>(person: Person | null, id: K, parts?: Parts<K>) => Promise<Answer<K>>
  /** As `call`, but fails the test when the answer is a problem. */
  ok: <K extends JsonRouteId>(person: Person | null, id: K, parts?: Parts<K>) => Promise<ResponseOf<K>>
  contextOf: (person: Person) => Context
  close: () => Promise<void>
}

export async function openWorld({
  at = '2026-03-10T08:00:00.000Z',
  webUrl,
  isMailSetUp = true,
  patienceMs,
  brokers,
  reachedBy = (connectionString) => connectionString,
}: {
  at?: string
  webUrl?: string
  /** Whether this server says that it sends mail. */
  isMailSetUp?: boolean
  /** How long somebody is waited for who has begun to send or to read. */
  patienceMs?: number
  /** Listens to the brokers of its rooms. */
  brokers?: { mayReachThisMachine: boolean }
  /** Another way to the same database. */
  reachedBy?: (connectionString: string) => string | Promise<string>
} = {}): Promise<World> {
  const photosFolder = await mkdtemp(join(tmpdir(), 'fryward-photos-'))
  const testDatabase = await createTestDatabase()
  const connectionString = await reachedBy(testDatabase.connectionString)
  const database = openDatabase({ connectionString, maxConnections: 8 })
  let now = at
  const clock: Clock = {
    now: () => now,
    set: (to) => {
      now = new Date(to).toISOString()
    },
    advanceMinutes: (minutes) => {
      now = new Date(Date.parse(now) + minutes * 60_000).toISOString()
    },
  }
  const app = await createApi({
    database,
    authSecret,
    publicUrl: 'http://localhost:3000',
    version: 'test',
    now: clock.now,
    requestsPerMinute: 1_000_000,
    photosFolder,
    webUrl,
    isMailSetUp,
    brokers,
    ...(patienceMs === undefined ? {} : { patienceMs }),
  })
  await app.ready()
  const call: World['call'] = (person, id, parts) => request({ app, person, id, parts: parts ?? {} })
  return {
    app,
    database,
    clock,
    photosFolder,
    person: (name, membership) => insertPerson(database, { name, membership, now }),
    call,
    ok: async (person, id, parts) => {
      const answer = await call(person, id, parts)
      if (answer.problem)
        throw new Error(`${id} was refused: ${answer.problem.detail} ${JSON.stringify(answer.problem.fields ?? [])}`)
      return answer.body
    },
    contextOf: (person) => ({
      database,
      actor: { kind: 'person', userId: person.userId, name: person.name },
      now: clock.now(),
    }),
    close: async () => {
      await app.close()
      await database.close()
      await testDatabase.drop()
      await rm(photosFolder, { recursive: true, force: true })
    },
  }
}

async function request<K extends JsonRouteId>({
  app,
  person,
  id,
  parts,
}: {
  app: FastifyInstance
  person: Person | null
  id: K
  parts: Parts<K>
}): Promise<Answer<K>> {
  const route = routes[id]
  const response = await app.inject({
    method: route.method,
    url: addressOf(id, parts.params),
    ...(parts.address ? { remoteAddress: parts.address } : {}),
    query: Object.fromEntries(Object.entries(parts.query ?? {}).map(([name, value]) => [name, String(value)])),
    headers: {
      host: 'localhost:3000',
      ...(person ? { cookie: person.cookie } : {}),
      ...(parts.key ? { 'idempotency-key': parts.key } : {}),
    },
    ...(parts.body === undefined ? {} : { payload: parts.body as object }),
  })
  const json: unknown = response.body === '' ? undefined : response.json()
  const { statusCode: status, headers } = response
  if (status >= 400) return { status, body: undefined as never, problem: ProblemSchema.parse(json), headers }
  return { status, body: route.response.parse(json) as ResponseOf<K>, problem: null, headers }
}

/** An account with a session in the sign-in library's own shape: a signed token in a cookie. */
async function insertPerson(
  database: Database,
  { name, membership, now }: { name: string; membership: { roomId: string; role: Role } | undefined; now: string },
): Promise<Person> {
  const userId = randomUUID()
  const email = `${name.toLowerCase().replaceAll(/[^a-z]+/g, '-')}-${userId.slice(0, 8)}@example.test`
  await database.prisma.user.create({ data: { id: userId, name, email, createdAt: now, updatedAt: now } })
  const token = randomUUID()
  const today = new Date()
  const expiresAt = new Date(today.getTime() + 7 * 86_400_000)
  await database.prisma.session.create({
    data: { id: randomUUID(), userId, token, expiresAt, createdAt: today, updatedAt: today },
  })
  if (membership) await database.prisma.membership.create({ data: { ...membership, userId, joinedAt: now } })
  const signature = createHmac('sha256', authSecret).update(token).digest('base64')
  return { userId, name, email, cookie: `fryward.session_token=${encodeURIComponent(`${token}.${signature}`)}` }
}

export const roomSetup = {
  name: 'Back room',
  timeZone: 'Europe/Lisbon',
  units: 'metric',
  lightsOnAt: '07:00',
  lightsOffAt: '19:00',
  salinity: 33,
  temperatureC: 27,
} as const

/** A server owner with a room of their own: one broodstock tank, one larval tank, one rotifer culture on concentrate. */
export async function openRoom(
  world: World,
  setup: Partial<BodyInputOf<'createRoom'>> = {},
): Promise<{ owner: Person; room: Room }> {
  const owner = await world.person('The owner')
  await world.database.prisma.server.upsert({
    where: { id: 1 },
    create: { id: 1, claimedAt: world.clock.now(), claimedBy: owner.userId },
    update: { claimedBy: owner.userId },
  })
  const room = await world.ok(owner, 'createRoom', {
    body: {
      ...roomSetup,
      concentrate: { name: 'Green bottle', cellsPerMl: 65e9 },
      tanks: [
        { name: 'Pair tank', kind: 'broodstock', volumeL: 80, temperatureC: 27, salinity: 33 },
        { name: 'Larval tank', kind: 'larval', volumeL: 40, temperatureC: 27, salinity: 30 },
      ],
      cultures: [
        {
          name: 'R1',
          kind: 'rotifer',
          strain: 'L',
          volumeL: 18,
          temperatureC: 25,
          salinity: 20,
          startDensityPerMl: 80,
        },
      ],
      ...setup,
    },
  })
  return { owner, room }
}
