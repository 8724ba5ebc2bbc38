// Builds the demo room in an empty database: six weeks of an invented room, lived through the same use cases that the
// API calls, at the times at which its people did things. The last line printed is JSON with the sign-ins.
// DEMO_NOW and DEMO_TIME_ZONE say when and where it is; DEMO_CACHE_DIR says where finished histories are kept.
import { randomBytes } from 'node:crypto'
import { hashPassword } from '@fryward/api/password-hash'
import { localDate } from '@fryward/husbandry'
import { seededRandom } from '@fryward/live-feed'
import { findFilledTable, openDatabase } from '@fryward/store'
import { liveThrough, localInstantMs } from './days.mjs'
import { buildHistory, demoPeople } from './history.mjs'
import { historyKey, keepHistory, restoreHistory, usualFolder } from './kept-history.mjs'
import { addProbes } from './probes.mjs'
import { Waters } from './waters.mjs'

const connectionString = process.env.DATABASE_URL
if (!connectionString) throw new Error('DATABASE_URL is not set: say which database the demo room goes into.')
const database = openDatabase({ connectionString, maxConnections: 2 })
const nowMs = process.env.DEMO_NOW ? Date.parse(process.env.DEMO_NOW) : Date.now()
const timeZone = process.env.DEMO_TIME_ZONE ?? Intl.DateTimeFormat().resolvedOptions().timeZone
const today = localDate({ timeZone, at: new Date(nowMs).toISOString() })
const midnightMs = localInstantMs({ date: today, time: '00:00', timeZone })

try {
  if ((await database.prisma.room.count()) > 0)
    throw new Error('This database has a room already; the demo room goes into an empty one only.')
  const state = await makeHistory()
  const { id: roomId } = await database.prisma.room.findFirstOrThrow()
  const people = await demoPeople(database, roomId)
  // Today, up to now. Luck begins anew each day, so that a kept history goes on like one just built.
  const random = seededRandom(8)
  const waters = new Waters(random, state)
  await liveThrough({ database, roomId, people, waters, random, today, fromMs: midnightMs, untilMs: nowMs })
  await addProbes({ database, roomId, owner: people.owner, random: seededRandom(9), nowMs })
  const signIns = await Promise.all(Object.entries(people).map(letIn))
  process.stderr.write('\n')
  console.log(JSON.stringify({ roomId, people: signIns }))
} finally {
  await database.close()
}

/** The room as it was when today began, and its waters: kept from an earlier build, or lived through now. */
async function makeHistory() {
  const build = () => buildHistory({ database, timeZone, today, untilMs: midnightMs })
  // A backup takes in the whole database: only one that is the demo's alone is kept, or filled from one that was.
  if ((await findFilledTable(connectionString)) !== null) return build()
  const place = { folder: process.env.DEMO_CACHE_DIR ?? usualFolder, key: historyKey({ today, timeZone }) }
  const kept = await restoreHistory({ ...place, connectionString })
  if (kept) return kept
  const state = await build()
  await keepHistory({ ...place, connectionString, state })
  return state
}

/** Nobody of a history can sign in; here each gets a password of their own. */
async function letIn([role, { userId, email }]) {
  const password = randomBytes(9).toString('base64url')
  const hash = await hashPassword(password)
  const { count } = await database.prisma.account.updateMany({
    where: { userId, providerId: 'credential' },
    data: { password: hash },
  })
  if (count !== 1) throw new Error(`The ${role} of the demo room has ${count} accounts with a password, not one.`)
  return { role, email, password }
}
