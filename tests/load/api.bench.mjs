// Today's list of the demo room under load, as a ratio to a bare Fastify route with one indexed query of eleven rows.
// Both servers run as processes of their own over the same PostgreSQL and take turns, so that the machine's other work
// falls on both.
import { fork, spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { Agent, request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startEmbeddedPostgres } from '@fryward/standalone'
import { applyMigrations } from '@fryward/store'

const root = join(import.meta.dirname, '../..')
const connections = 8
const turnMs = 4000
const turns = 3

export async function run() {
  const dataDir = mkdtempSync(join(tmpdir(), 'fryward-bench-'))
  chmodSync(dataDir, 0o755)
  const postgres = await startEmbeddedPostgres({ dataDir, isDurable: false, maxConnections: 60 })
  const children = []
  try {
    const { connectionString } = postgres
    await applyMigrations({ connectionString })
    console.log('Building the demo room')
    const demo = await seed(connectionString)
    const environment = {
      ...process.env,
      DATABASE_URL: connectionString,
      PORT: '0',
      HOST: '127.0.0.1',
      LOG_LEVEL: 'silent',
      AUTH_SECRET: 'x'.repeat(40),
      REQUESTS_PER_MINUTE: '100000000',
    }
    const api = await start(join(root, 'apps/api/dist/main.js'), environment, children)
    const bare = await start(
      join(import.meta.dirname, 'bare-server.mjs'),
      { ...environment, ROOM_ID: demo.roomId },
      children,
    )
    const cookie = await signIn(
      api,
      demo.people.find(({ role }) => role === 'caretaker'),
    )
    const day = { url: `${api}/api/v1/rooms/${demo.roomId}/days/today`, cookie }
    const reference = { url: `${bare}/rows`, cookie }
    await load(day, 1000)
    await load(reference, 1000)
    const seen = { day: [], reference: [] }
    for (let turn = 0; turn < turns; turn += 1) {
      seen.reference.push(await load(reference, turnMs))
      seen.day.push(await load(day, turnMs))
    }
    report(seen)
  } finally {
    for (const child of children) child.kill('SIGTERM')
    await postgres.stop()
    rmSync(dataDir, { recursive: true, force: true })
  }
}

function report({ day, reference }) {
  const total = (runs) => runs.reduce((sum, { perSecond }) => sum + perSecond, 0) / runs.length
  const slow = (runs) => Math.max(...runs.map(({ p99Ms }) => p99Ms))
  console.log(
    `today's list        ${total(day).toFixed(0)} requests a second, 99th percentile ${slow(day).toFixed(1)} ms, ${(day[0].bytes / 1024).toFixed(0)} kB an answer`,
  )
  console.log(
    `bare Fastify and pg ${total(reference).toFixed(0)} requests a second, 99th percentile ${slow(reference).toFixed(1)} ms, ${(reference[0].bytes / 1024).toFixed(0)} kB an answer`,
  )
  console.log(`ratio ${(total(day) / total(reference)).toFixed(2)} (aim 0.60)`)
}

function seed(connectionString) {
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      ['--disable-warning=DeprecationWarning', join(root, 'prisma/demo/seed.mjs')],
      {
        env: { ...process.env, DATABASE_URL: connectionString },
        stdio: ['ignore', 'pipe', 'inherit'],
      },
    )
    let text = ''
    child.stdout.on('data', (chunk) => {
      text += chunk
    })
    child.on('exit', (code) =>
      code === 0
        ? resolve(JSON.parse(text.trim().split('\n').at(-1)))
        : reject(new Error(`the demo room was not built (exit ${code})`)),
    )
  })
}

function start(module, env, children) {
  const child = fork(module, { env, stdio: ['ignore', 'ignore', 'inherit', 'ipc'] })
  children.push(child)
  return new Promise((resolve, reject) => {
    child.on('message', (message) => message.ready && resolve(message.url))
    child.on('exit', (code) => reject(new Error(`${module} ended with ${code}`)))
  })
}

async function signIn(base, { email, password }) {
  const answer = await fetch(`${base}/api/auth/sign-in/email`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', origin: base },
    body: JSON.stringify({ email, password }),
  })
  if (!answer.ok) throw new Error(`sign-in was refused: ${answer.status} ${await answer.text()}`)
  return answer.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0])
    .join('; ')
}

/** As many requests as `connections` keep-alive connections get answered in `ms`. */
async function load({ url, cookie }, ms) {
  const agent = new Agent({ keepAlive: true, maxSockets: connections })
  const latencies = []
  let bytes = 0
  const until = performance.now() + ms
  const worker = async () => {
    while (performance.now() < until) {
      const from = performance.now()
      bytes = await get({ url, cookie, agent })
      latencies.push(performance.now() - from)
    }
  }
  const from = performance.now()
  await Promise.all(Array.from({ length: connections }, worker))
  const seconds = (performance.now() - from) / 1000
  agent.destroy()
  latencies.sort((a, b) => a - b)
  return { perSecond: latencies.length / seconds, p99Ms: latencies[Math.floor(latencies.length * 0.99)], bytes }
}

function get({ url, cookie, agent }) {
  return new Promise((resolve, reject) => {
    const asked = request(url, { agent, headers: { cookie, 'accept-encoding': 'gzip, deflate, br' } }, (answer) => {
      let bytes = 0
      answer.on('data', (chunk) => {
        bytes += chunk.length
      })
      answer.on('end', () =>
        answer.statusCode === 200 ? resolve(bytes) : reject(new Error(`${url} answered ${answer.statusCode}`)),
      )
    })
    asked.on('error', reject)
    asked.end()
  })
}
