// How long /health waits beside twenty strangers who send what costs most to read, as a ratio to the same server idle.
// The strangers and whoever asks for /health are processes of their own: what they do costs the server nothing.
import { fork } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { Agent, request } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { startEmbeddedPostgres } from '@fryward/standalone'
import { applyMigrations } from '@fryward/store'

const root = join(import.meta.dirname, '../..')
const turnMs = 8000
const everyMs = 10
const strangers = 20
const budgetMs = 200

export async function run() {
  const dataDir = mkdtempSync(join(tmpdir(), 'fryward-bench-'))
  chmodSync(dataDir, 0o755)
  const postgres = await startEmbeddedPostgres({ dataDir, isDurable: false, maxConnections: 60 })
  const children = []
  try {
    const { connectionString } = postgres
    await applyMigrations({ connectionString })
    const api = await start(join(root, 'apps/api/packed/main.js'), children, {
      DATABASE_URL: connectionString,
      PORT: '0',
      HOST: '127.0.0.1',
      LOG_LEVEL: 'silent',
      AUTH_SECRET: 'x'.repeat(40),
      // What is measured is what the requests cost, not that they are turned away for their number.
      REQUESTS_PER_MINUTE: '100000000',
    })
    await healthFor(api, 1000)
    const idle = await healthFor(api, turnMs)
    const crowd = fork(join(import.meta.dirname, 'hostile-senders.mjs'), {
      env: { ...process.env, API: api, STRANGERS: String(strangers) },
    })
    children.push(crowd)
    await new Promise((resolve) => crowd.once('message', resolve))
    const beside = await healthFor(api, turnMs)
    const sent = await new Promise((resolve) => {
      crowd.once('message', resolve)
      crowd.send('stop')
    })
    report({ idle, beside, sent })
  } finally {
    for (const child of children) child.kill('SIGTERM')
    await postgres.stop()
    rmSync(dataDir, { recursive: true, force: true })
  }
}

function report({ idle, beside, sent }) {
  const line = ({ p50Ms, p99Ms, worstMs }) =>
    `median ${p50Ms.toFixed(1)} ms, 99th percentile ${p99Ms.toFixed(1)} ms, longest ${worstMs.toFixed(1)} ms`
  console.log(`/health, idle server           ${line(idle)}`)
  console.log(`/health beside ${strangers} senders     ${line(beside)}`)
  for (const [what, { answered, statuses }] of Object.entries(sent))
    console.log(`  ${what.padEnd(46)} ${String(answered).padStart(6)} sent, answered ${statuses.join(', ')}`)
  console.log(
    `ratio ${(beside.p99Ms / idle.p99Ms).toFixed(1)}; 99th percentile ${beside.p99Ms.toFixed(0)} ms (budget ${budgetMs} ms)`,
  )
  if (beside.p99Ms > budgetMs) process.exitCode = 1
}

function start(module, children, env) {
  const child = fork(module, { env: { ...process.env, ...env }, stdio: ['ignore', 'ignore', 'inherit', 'ipc'] })
  children.push(child)
  return new Promise((resolve, reject) => {
    child.on('message', (message) => message.ready && resolve(message.url))
    child.on('exit', (code) => reject(new Error(`${module} ended with ${code}`)))
  })
}

/** Asks for /health at an even pace, whether or not the last answer has come: a server that stands still shows. */
async function healthFor(api, ms) {
  const agent = new Agent({ keepAlive: true, maxSockets: 64 })
  const took = []
  const asked = []
  const until = performance.now() + ms
  while (performance.now() < until) {
    const from = performance.now()
    asked.push(get(`${api}/api/v1/health`, agent).then(() => took.push(performance.now() - from)))
    await new Promise((resolve) => setTimeout(resolve, everyMs))
  }
  await Promise.all(asked)
  agent.destroy()
  took.sort((a, b) => a - b)
  const at = (share) => took[Math.min(took.length - 1, Math.floor(took.length * share))]
  return { p50Ms: at(0.5), p99Ms: at(0.99), worstMs: at(1) }
}

function get(url, agent) {
  return new Promise((resolve, reject) => {
    const asked = request(url, { agent }, (answer) => {
      answer.resume()
      answer.on('end', () =>
        answer.statusCode === 200 ? resolve() : reject(new Error(`${url} answered ${answer.statusCode}`)),
      )
    })
    asked.on('error', reject)
    asked.end()
  })
}
