// npm run fuzz -- [--requests 100000] [--seed 1] [--hands 16]: made-up requests over every route, signed out and signed in,
// and bytes on bare sockets, against the compiled API on a PostgreSQL of its own. Any 5xx but "busy" and any hang fails.
import { fork } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { root } from '../../apps/standalone/build/project.mjs'
import { ensureClient, ensurePrograms } from '../../apps/standalone/build/steps.mjs'
import { bytesOf, chance, requestsOf, sendBytes, sendRequest } from './generated-requests.mjs'

// Nothing may take longer, however busy the machine is that this runs on beside everything else.
const patienceMs = 60_000
/** A room that grew by as many made-up things is left for a new one: this looks for what breaks, not for what is slow. */
const roomLasts = 4000
const { values } = parseArgs({
  options: {
    requests: { type: 'string', default: '100000' },
    seed: { type: 'string', default: '1' },
    hands: { type: 'string', default: '16' },
  },
})

await ensureClient()
await ensurePrograms()
// Compiled by now, even in a fresh clone.
const { startEmbeddedPostgres } = await import('@fryward/standalone')
const { applyMigrations } = await import('@fryward/store')
const dataDir = mkdtempSync(join(tmpdir(), 'fryward-fuzz-'))
chmodSync(dataDir, 0o755)
const postgres = await startEmbeddedPostgres({ dataDir, isDurable: false, maxConnections: 60 })
let api
try {
  await applyMigrations({ connectionString: postgres.connectionString })
  api = await startApi(postgres.connectionString)
  await fuzz(api)
} finally {
  api?.child.kill('SIGTERM')
  await postgres.stop()
  rmSync(dataDir, { recursive: true, force: true })
}

function startApi(connectionString) {
  const child = fork(join(root, 'apps/api/packed/main.js'), {
    env: {
      ...process.env,
      ...{ DATABASE_URL: connectionString, PORT: '0', HOST: '127.0.0.1', LOG_LEVEL: 'error', DATA_DIR: dataDir },
      ...{ AUTH_SECRET: 'x'.repeat(40), REQUESTS_PER_MINUTE: '100000000' },
    },
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  })
  return new Promise((resolve, reject) => {
    child.on('message', ({ ready, url, claimCode }) => ready && resolve({ child, origin: url, claimCode }))
    child.on('exit', (code) => reject(new Error(`the API ended with ${code}`)))
  })
}

async function fuzz({ origin, claimCode }) {
  const json = { 'content-type': 'application/json' }
  const password = 'four words not common'
  const post = async (path, body, headers = {}) => {
    const answer = await fetch(`${origin}${path}`, {
      method: 'POST',
      headers: { ...json, ...headers },
      body: JSON.stringify(body),
    })
    if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`)
    return answer
  }
  const email = 'owner@example.test'
  await post('/api/v1/claim', { code: claimCode, name: 'The owner', email, password })
  const signIn = async () =>
    (await post('/api/auth/sign-in/email', { email, password })).headers
      .getSetCookie()
      .map((each) => each.split(';')[0])
      .join('; ')
  let cookie = await signIn()
  const known = await openRoom({ origin, post, cookie })
  const description = await (await fetch(`${origin}/api/v1/openapi.json`)).json()
  const random = chance(Number(values.seed))
  let next = requestsOf(description, { random, known })
  const wanted = Number(values.requests)
  const tally = new Map()
  const bad = []
  const routesSeen = new Set()
  let begun = 0
  const note = (what, outcome, told) => {
    const key = `${what} ${outcome}`
    tally.set(key, (tally.get(key) ?? 0) + 1)
    if (outcome !== 'hang' && !/^5(?!03)/.test(outcome)) return
    bad.push(`${outcome}: ${told}`)
    console.log(`${outcome}: ${told}`)
  }
  const address = new URL(origin)
  const hand = async () => {
    while (begun < wanted) {
      begun += 1
      const number = begun
      if (number % 10_000 === 0) console.log(`${number} sent, ${bad.length} bad`)
      // Some of what is made up signs the owner out; a try a minute and more are slowed down, so now and then is enough.
      if (number % 2000 === 0) cookie = await signIn().catch(() => cookie)
      if (number % roomLasts === 0) {
        const opened = await openRoom({ origin, post, cookie }).catch((error) =>
          console.log(`no new room: ${error.message}`),
        )
        if (opened) next = requestsOf(description, { random, known: opened })
      }
      if (random() < 0.1) {
        const bytes = bytesOf(random)
        note(
          'socket',
          await sendBytes({ host: address.hostname, port: Number(address.port) }, bytes, patienceMs),
          JSON.stringify(bytes.toString('latin1').slice(0, 200)),
        )
        continue
      }
      const request = next()
      routesSeen.add(request.id)
      // Signing out is tried by strangers: whoever is in is to stay in.
      const isIn = random() < 0.75 && request.id !== 'signOut' && request.id !== 'endSession'
      const outcome = await sendRequest(origin, request, { cookie: isIn ? cookie : undefined, patienceMs })
      note(
        isIn ? 'signed in' : 'signed out',
        outcome,
        `${request.method} ${request.url} ${String(request.body ?? '').slice(0, 300)}`,
      )
    }
  }
  await Promise.all(Array.from({ length: Number(values.hands) }, hand))
  for (const [key, count] of [...tally].sort()) console.log(`${key.padEnd(30)} ${String(count).padStart(8)}`)
  const failed = (what) => bad.filter((each) => what.test(each)).length
  console.log(
    `${wanted} requests over ${routesSeen.size} routes, seed ${values.seed}: 5xx ${failed(/^5/)}, hangs ${failed(/^hang/)}`,
  )
  if (bad.length > 0) process.exitCode = 1
}

/** A room of a pair's tank and a culture; gives the ids that requests are made up with. */
async function openRoom({ origin, post, cookie }) {
  const water = { temperatureC: 27, salinity: 33 }
  const light = { lightsOnAt: '07:00', lightsOffAt: '19:00' }
  const room = { name: 'Back room', timeZone: 'Europe/Lisbon', units: 'metric', ...light, ...water }
  const things = {
    tanks: [{ name: 'Pair tank', kind: 'broodstock', volumeL: 80, ...water }],
    cultures: [{ name: 'R1', kind: 'rotifer', strain: 'L', volumeL: 18, ...water, startDensityPerMl: 80 }],
  }
  const { id: roomId } = await (await post('/api/v1/rooms', { ...room, ...things }, { cookie })).json()
  const idsAt = async (path) => {
    const answer = await fetch(`${origin}/api/v1/rooms/${roomId}${path}`, { headers: { cookie } })
    return (await answer.json()).map((each) => each.id)
  }
  const [tanks, cultures] = [await idsAt('/tanks'), await idsAt('/cultures')]
  return {
    roomId: [roomId],
    tankId: tanks,
    cultureId: cultures,
    subjectId: [roomId, ...tanks, ...cultures],
    date: ['today', 'tomorrow'],
    size: ['full'],
  }
}
