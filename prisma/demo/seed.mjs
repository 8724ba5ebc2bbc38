// Builds the demo room in an empty database: six weeks of an invented room, lived through the same use cases that the
// API calls, at the times at which its people did things. The last line printed is JSON with the sign-ins.
import { randomBytes } from 'node:crypto'
import { hashPassword } from '@fryward/api'
import { seededRandom } from '@fryward/live-feed'
import * as room from '@fryward/room'
import { inTransaction, openDatabase } from '@fryward/store'
import { liveThrough } from './days.mjs'
import { daysOfHistory, pairs, roomSetup } from './story.mjs'

const connectionString = process.env.DATABASE_URL
if (!connectionString) throw new Error('DATABASE_URL is not set: say which database the demo room goes into.')
const database = openDatabase({ connectionString, maxConnections: 2 })
const nowMs = process.env.DEMO_NOW ? Date.parse(process.env.DEMO_NOW) : Date.now()
const timeZone = process.env.DEMO_TIME_ZONE ?? Intl.DateTimeFormat().resolvedOptions().timeZone
const startMs = nowMs - daysOfHistory * 86_400_000
const iso = (ms) => new Date(ms).toISOString()

try {
  if ((await database.prisma.room.count()) > 0)
    throw new Error('This database has a room already; the demo room goes into an empty one only.')
  const people = await insertPeople()
  const roomId = await setUp(people.owner)
  for (const role of ['caretaker', 'stand_in', 'viewer']) {
    await database.prisma.membership.create({
      data: { roomId, userId: people[role].userId, role, joinedAt: iso(startMs) },
    })
  }
  await liveThrough({ database, roomId, people, startMs, nowMs, random: seededRandom(7) })
  console.log(
    JSON.stringify({
      roomId,
      people: Object.entries(people).map(([role, { email, password }]) => ({ role, email, password })),
    }),
  )
} finally {
  await database.close()
}

async function insertPeople() {
  const names = {
    owner: 'The owner',
    caretaker: 'The weekday caretaker',
    stand_in: 'The weekend stand-in',
    viewer: 'A visitor',
  }
  const people = {}
  for (const [role, name] of Object.entries(names)) {
    const password = randomBytes(9).toString('base64url')
    const email = `${role.replace('_', '-')}@demo.example`
    const account = { name, email, passwordHash: await hashPassword(password) }
    const userId = await inTransaction(database, (tx) => room.insertAccount(tx, { account, now: iso(startMs) }))
    people[role] = { userId, name, email, password }
  }
  return people
}

async function setUp(owner) {
  const ctx = { database, actor: { kind: 'person', userId: owner.userId, name: owner.name }, now: iso(startMs) }
  const created = await room.createRoom({ ctx, input: roomSetup(timeZone), isDemo: true })
  const tanks = await room.listTanks({ ctx, roomId: created.id })
  for (const { tank, formedDaysAgo, ...pair } of pairs) {
    const tankId = tanks.find((each) => each.name === tank).id
    const formedOn = iso(nowMs - formedDaysAgo * 86_400_000).slice(0, 10)
    // A pair formed after the room was set up arrives on its day (days.mjs).
    if (formedDaysAgo > daysOfHistory)
      await room.createPair({
        ctx,
        roomId: created.id,
        input: { ...pair, tankId, formedOn, isResting: false, note: '' },
      })
  }
  return created.id
}
