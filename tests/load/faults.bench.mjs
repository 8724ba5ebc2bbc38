// Kills under load: writers send numbered notes under repeat keys, each again until it is acknowledged, while the API and
// PostgreSQL are killed (SIGKILL) and started anew. Every acknowledged note then stands in the database exactly once.
import { fork } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { parseArgs } from 'node:util'
import { findFreePort, startEmbeddedPostgres } from '@fryward/standalone'
import { applyMigrations } from '@fryward/store'
import pg from 'pg'
import { chance } from '../faults/generated-requests.mjs'

const root = join(import.meta.dirname, '../..')
const writers = 6
const patienceMs = 60_000

/** @param {string[]} args `--kills 500 --seed 1`; every fifth kill is PostgreSQL's. */
export async function run(args) {
  const { values } = parseArgs({
    args,
    options: { kills: { type: 'string', default: '500' }, seed: { type: 'string', default: '1' } },
  })
  const dataDir = mkdtempSync(join(tmpdir(), 'fryward-faults-'))
  chmodSync(dataDir, 0o755)
  const house = {
    dataDir,
    postgres: await startEmbeddedPostgres({ dataDir }),
    api: undefined,
    endedByItself: 0,
    isOver: false,
    port: await findFreePort(),
  }
  try {
    await applyMigrations({ connectionString: house.postgres.connectionString })
    const { claimCode } = await startApi(house)
    const room = await openRoom(`http://127.0.0.1:${house.port}`, claimCode)
    const load = startWriters(room)
    const times = await killAndWait(house, { kills: Number(values.kills), random: chance(Number(values.seed)), room })
    await load.stop()
    await report({ house, load, times, room })
  } finally {
    house.isOver = true
    house.api?.kill('SIGKILL')
    await house.postgres.stop()
    rmSync(dataDir, { recursive: true, force: true })
  }
}

function startApi(house) {
  const child = fork(join(root, 'apps/api/dist/main.js'), {
    env: {
      ...process.env,
      ...{ DATABASE_URL: house.postgres.connectionString, PORT: String(house.port), HOST: '127.0.0.1' },
      ...{ LOG_LEVEL: 'silent', AUTH_SECRET: 'x'.repeat(40), REQUESTS_PER_MINUTE: '100000000' },
    },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  })
  house.api = child
  child.on('exit', (_code, signal) => {
    if (signal === 'SIGKILL' || house.isOver || !child.wasReady) return
    // Started again, as the supervisor would; told at the end.
    house.endedByItself += 1
    void again(() => startApi(house))
  })
  return new Promise((resolve, reject) => {
    child.on('message', (message) => {
      if (!message.ready) return
      child.wasReady = true
      resolve(message)
    })
    child.on('exit', () => reject(new Error('the API ended before it was ready')))
  })
}

async function openRoom(origin, code) {
  const post = async (path, body, headers = {}) => {
    const sent = {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: JSON.stringify(body),
    }
    const answer = await fetch(`${origin}${path}`, sent)
    if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`)
    return answer
  }
  const account = { email: 'owner@example.test', password: 'four words not common' }
  await post('/api/v1/claim', { code, name: 'The owner', ...account })
  const signedIn = await post('/api/auth/sign-in/email', account)
  const cookie = signedIn.headers
    .getSetCookie()
    .map((each) => each.split(';')[0])
    .join('; ')
  const setUp = {
    name: 'Back room',
    timeZone: 'Europe/Lisbon',
    units: 'metric',
    lightsOnAt: '07:00',
    lightsOffAt: '19:00',
  }
  const { id } = await (await post('/api/v1/rooms', { ...setUp, salinity: 33, temperatureC: 27 }, { cookie })).json()
  return { origin, cookie, id }
}

/** Each note has a key of its own and is sent until the server says that it is kept. */
function startWriters({ origin, cookie, id }) {
  const acknowledged = new Set()
  let serial = 0
  let isOver = false
  const send = async (number) => {
    const answer = await fetch(`${origin}/api/v1/rooms/${id}/notes`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie, 'idempotency-key': `note-${number}-of-the-bench` },
      body: JSON.stringify({ text: `note ${number}`, isWorry: false }),
      signal: AbortSignal.timeout(30_000),
    })
    await answer.arrayBuffer()
    if (answer.status < 500 && answer.status !== 201) throw new Error(`a note was refused with ${answer.status}`)
    return answer.status === 201
  }
  const refusals = []
  const writer = async () => {
    while (!isOver) {
      serial += 1
      const number = serial
      for (;;) {
        const isKept = await send(number).catch((error) => {
          if (String(error.message).startsWith('a note')) refusals.push(error.message)
          // No answer: sent again under its key.
          return false
        })
        if (isKept) break
        await sleep(50)
      }
      acknowledged.add(number)
    }
  }
  const all = Array.from({ length: writers }, writer)
  return {
    acknowledged,
    refusals,
    stop: async () => {
      isOver = true
      await Promise.all(all)
    },
  }
}

async function killAndWait(house, { kills, random, room }) {
  const times = { API: [], PostgreSQL: [] }
  for (let kill = 1; kill <= kills; kill += 1) {
    await sleep(200 + random() * 800)
    const what = kill % 5 === 0 ? 'PostgreSQL' : 'API'
    const from = performance.now()
    if (what === 'PostgreSQL') {
      process.kill(house.postgres.pid, 'SIGKILL')
      house.postgres = await again(() => startEmbeddedPostgres({ dataDir: house.dataDir, port: house.postgres.port }))
    } else {
      const gone = new Promise((resolve) => house.api.once('exit', resolve))
      house.api.kill('SIGKILL')
      await gone
      await again(() => startApi(house))
    }
    await again(async () => {
      const answer = await fetch(`${room.origin}/api/v1/health`, { signal: AbortSignal.timeout(5000) })
      if (!answer.ok) throw new Error(`health ${answer.status}`)
    })
    times[what].push(performance.now() - from)
    if (kill % 5 === 0) console.log(`${kill} kills`)
  }
  return times
}

/** Until it works, for a minute. */
async function again(work) {
  const until = Date.now() + patienceMs
  for (;;) {
    try {
      return await work()
    } catch (error) {
      if (Date.now() > until) throw error
      await sleep(100)
    }
  }
}

async function report({ house, load, times, room }) {
  const client = new pg.Client({ connectionString: house.postgres.connectionString })
  await client.connect()
  const { rows } = await client.query(
    'SELECT text, count(*)::int AS times FROM note WHERE room_id = $1 GROUP BY text',
    [room.id],
  )
  await client.end()
  const kept = new Map(rows.map(({ text, times }) => [text, times]))
  const lost = [...load.acknowledged].filter((number) => !kept.has(`note ${number}`)).length
  const doubled = [...kept.values()].filter((count) => count > 1).length
  for (const [what, ms] of Object.entries(times)) {
    const sorted = ms.sort((a, b) => a - b)
    const at = (share) => (sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(0)
    console.log(
      `${what.padEnd(12)} killed ${sorted.length} times; answers again after ${at(0.5)} ms (median), ${at(1)} ms (longest)`,
    )
  }
  console.log(
    `${load.acknowledged.size} notes acknowledged; lost ${lost}, doubled ${doubled}, refused ${load.refusals.length}; the API ended by itself ${house.endedByItself} times`,
  )
  if (lost + doubled + load.refusals.length + house.endedByItself > 0) process.exitCode = 1
}
