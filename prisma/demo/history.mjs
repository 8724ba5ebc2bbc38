// The demo room from nothing to the start of today. It depends on the code, the date and the zone alone.
import { addDays } from '@fryward/husbandry'
import { seededRandom } from '@fryward/live-feed'
import * as room from '@fryward/room'
import { inTransaction } from '@fryward/store'
import { liveThrough, localInstantMs } from './days.mjs'
import { daysOfHistory, pairs, roomSetup } from './story.mjs'
import { Waters } from './waters.mjs'

const names = {
  owner: 'The owner',
  caretaker: 'The weekday caretaker',
  stand_in: 'The weekend stand-in',
  viewer: 'A visitor',
}
const emailOf = (role) => `${role.replace('_', '-')}@demo.example`
const iso = (ms) => new Date(ms).toISOString()

/** Fills the database up to `untilMs`, when `today` begins. Gives the state of the waters then; nobody can sign in yet. */
export async function buildHistory({ database, timeZone, today, untilMs }) {
  // At noon, when nobody's round begins; that evening's is the first.
  const startMs = localInstantMs({ date: addDays(today, -daysOfHistory), time: '12:00', timeZone })
  const people = {}
  for (const role of Object.keys(names)) people[role] = await insertPerson({ database, role, startMs })
  const roomId = await setUp({ database, owner: people.owner, timeZone, today, startMs })
  for (const role of ['caretaker', 'stand_in', 'viewer']) {
    await database.prisma.membership.create({
      data: { roomId, userId: people[role].userId, role, joinedAt: iso(startMs) },
    })
  }
  const random = seededRandom(7)
  const waters = new Waters(random)
  const first = await database.prisma.subject.findFirstOrThrow({ where: { roomId, name: 'R1' } })
  waters.addCulture(first.id, {
    volumeL: 18,
    densityPerMl: 70,
    growthPerDay: 0.55,
    capacityPerMl: 520,
    atMs: startMs,
  })
  await liveThrough({ database, roomId, people, waters, random, today, fromMs: startMs, untilMs })
  return waters.state()
}

/** The room's people by role, as liveThrough wants them. */
export async function demoPeople(database, roomId) {
  const members = await database.prisma.membership.findMany({ where: { roomId }, include: { user: true } })
  const byRole = new Map(
    members.map(({ role, user }) => [role, { userId: user.id, name: user.name, email: user.email }]),
  )
  return Object.fromEntries(Object.keys(names).map((role) => [role, byRole.get(role)]))
}

async function insertPerson({ database, role, startMs }) {
  const name = names[role]
  // No password hashes to nothing.
  const account = { name, email: emailOf(role), passwordHash: '' }
  const userId = await inTransaction(database, (tx) => room.insertAccount(tx, { account, now: iso(startMs) }))
  return { userId, name }
}

async function setUp({ database, owner, timeZone, today, startMs }) {
  const ctx = { database, actor: { kind: 'person', userId: owner.userId, name: owner.name }, now: iso(startMs) }
  const created = await room.createRoom({ ctx, input: roomSetup(timeZone), isDemo: true })
  const tanks = await room.listTanks({ ctx, roomId: created.id })
  for (const { tank, formedDaysAgo, ...pair } of pairs) {
    const tankId = tanks.find((each) => each.name === tank).id
    const formedOn = addDays(today, -formedDaysAgo)
    // A pair formed after the room was set up arrives on its day (happenings.mjs).
    if (formedDaysAgo > daysOfHistory)
      await room.createPair({
        ctx,
        roomId: created.id,
        input: { ...pair, tankId, formedOn, isResting: false, note: '' },
      })
  }
  return created.id
}
