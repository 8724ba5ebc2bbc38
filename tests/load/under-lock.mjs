// One count in a room of 60 vessels: how long the whole write takes on a real PostgreSQL, lock, planning and answer
// included, against a transaction that takes the same lock and does nothing, and against drafting its two days anew; and
// the same again with five years of ended things in the room. In a process of its own, as a service is one: whatever lived
// through the year before leaves a memory that is swept at every count.
import { fork } from 'node:child_process'
import { randomUUID } from 'node:crypto'
import { once } from 'node:events'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { performance } from 'node:perf_hooks'
import { addDays, draftDay, rules } from '@fryward/husbandry'
import { openDays, recordFact } from '@fryward/room'
import { startEmbeddedPostgres } from '@fryward/standalone'
import { advanceRevision, applyMigrations, inTransaction, openDatabase } from '@fryward/store'
import { addEndedYears, keepRoom } from './lived-in-room.mjs'

const counts = { warm: 40, timed: 60 }
const years = 5

/** @param kept `{ snapshot, date }`, the room and its day */
export async function timeUnderLock(kept) {
  const child = fork(import.meta.filename, { stdio: 'inherit' })
  const ended = once(child, 'exit')
  child.send(kept)
  const [code] = await ended
  if (code !== 0) throw new Error(`Counting under the lock ended with ${code}`)
}

if (process.send) {
  const [kept] = await once(process, 'message')
  await countUnderLock(kept)
  process.disconnect()
}

async function countUnderLock({ snapshot, date }) {
  const dataDir = mkdtempSync(join(tmpdir(), 'fryward-lock-'))
  chmodSync(dataDir, 0o755)
  const postgres = await startEmbeddedPostgres({ dataDir, isDurable: false, maxConnections: 20 })
  const database = openDatabase({ connectionString: postgres.connectionString, maxConnections: 4 })
  try {
    await applyMigrations({ connectionString: postgres.connectionString })
    const now = `${date}T12:00:00.000Z`
    const young = await keepRoom(database, snapshot, now)
    const old = await keepRoom(database, asAnotherRoom(snapshot), now)
    const ended = await addEndedYears(database, old, { years, now })
    await database.pool.query('ANALYZE')
    report({
      ended,
      anew: draftedAnew(snapshot, date),
      ...(await measureWrites(database, { young, old, snapshot, date })),
    })
  } finally {
    await database.close()
    await postgres.stop()
    rmSync(dataDir, { recursive: true, force: true })
  }
}

/** The same room once more; ids are a room's own, but for those of the room itself. */
function asAnotherRoom({ room, facts, ...snapshot }) {
  const id = randomUUID()
  const ofRoom = (fact) => (fact.subjectId === room.id ? { ...fact, subjectId: id } : fact)
  return { ...snapshot, room: { ...room, id }, facts: facts.map(ofRoom) }
}

function report({ young, old, bare, anew, ended }) {
  const ratio = (a, b) => (a / b).toFixed(2)
  console.log(`one count, whole write    ${young.toFixed(1)} ms, with the lock from its second statement on`)
  console.log(`  to the bare lock        ${bare.toFixed(1)} ms: ratio ${ratio(young, bare)}`)
  console.log(`  to both days anew       ${anew.toFixed(1)} ms: ratio ${ratio(young, anew)}`)
  console.log(`${years} years of ended things   ${ended.things} things, ${ended.facts} facts`)
  console.log(`  one count               ${old.toFixed(1)} ms: ratio to the room without them ${ratio(old, young)}`)
}

/** Turn by turn in both rooms, so that whatever else the machine does falls on both. */
async function measureWrites(database, { young, old, snapshot, date }) {
  const at = (index) => new Date(Date.parse(`${date}T12:00:00.000Z`) + index * 60_000).toISOString()
  const ctx = (index) => ({ database, actor: { kind: 'system', job: 'bench' }, now: at(index) })
  for (const roomId of [young, old]) await openDays({ ctx: ctx(0), roomId })
  const rotifers = snapshot.cultures.filter(({ kind }) => kind === 'rotifer')
  const times = { young: [], old: [], bare: [] }
  for (let index = 1; index <= counts.warm + counts.timed; index += 1) {
    const data = { of: 'culture', animals: [150 + (index % 9), 160, 155], volumeMl: 1, dilution: 1 }
    const input = { kind: 'count', subjectId: rotifers[index % rotifers.length].id, data }
    const record = (roomId) => timed(() => recordFact({ ctx: ctx(index), roomId, input }))
    times.young.push(await record(young))
    times.old.push(await record(old))
    times.bare.push(await timed(() => inTransaction(database, (tx) => advanceRevision(tx, young))))
  }
  // The first warm the process up: a room that is worked in is known.
  const median = (list) => list.slice(counts.warm).sort((a, b) => a - b)[counts.timed / 2]
  return { young: median(times.young), old: median(times.old), bare: median(times.bare) }
}

async function timed(work) {
  const from = performance.now()
  await work()
  return performance.now() - from
}

function draftedAnew(snapshot, date) {
  const times = []
  for (let turn = 0; turn < 7; turn += 1) {
    const given = { ...snapshot, facts: [...snapshot.facts] }
    const from = performance.now()
    for (const day of [date, addDays(date, 1)]) draftDay({ snapshot: given, date: day, rules })
    times.push(performance.now() - from)
  }
  return times.sort((a, b) => a - b)[3]
}
