// From the command to an answer of /api/v1/health: with an empty data folder, and with the one that this left. The
// reference is PostgreSQL alone, made and started in the same run.
import { spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findFreePort, startEmbeddedPostgres } from '@fryward/standalone'
import { root } from '../../apps/standalone/build/project.mjs'
import { ensureDashboard } from '../../apps/standalone/build/steps.mjs'

const turns = 3
const lookEveryMs = 10
const patienceMs = 180_000

export async function run() {
  // Nothing is left to build for the starts that are timed.
  await ensureDashboard()
  console.log('until health answers   start s   PostgreSQL alone s   ratio')
  const seen = { cold: [], warm: [] }
  for (let turn = 0; turn < turns; turn += 1) {
    const [ours, alone] = [makeFolder(), makeFolder()]
    try {
      for (const kind of ['cold', 'warm'])
        seen[kind].push({ reference: await timePostgres(alone), start: await timeStart(ours) })
    } finally {
      for (const folder of [ours, alone]) rmSync(folder, { recursive: true, force: true })
    }
  }
  for (const [kind, times] of Object.entries(seen)) {
    const start = median(times.map((time) => time.start))
    const reference = median(times.map((time) => time.reference))
    const [seconds, alone] = [start, reference].map((ms) => (ms / 1000).toFixed(2))
    console.log(
      `${kind.padEnd(22)} ${seconds.padStart(7)} ${alone.padStart(20)} ${(start / reference).toFixed(1).padStart(7)}`,
    )
  }
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]

/** PostgreSQL's own user enters it when we are root. */
function makeFolder() {
  const folder = mkdtempSync(join(tmpdir(), 'fryward-bench-'))
  chmodSync(folder, 0o755)
  return folder
}

async function timePostgres(dataDir) {
  const from = performance.now()
  const server = await startEmbeddedPostgres({ dataDir })
  const ms = performance.now() - from
  await server.stop()
  return ms
}

async function timeStart(folder) {
  const port = await findFreePort()
  const env = { ...process.env, DATA_DIR: join(folder, 'data'), PORT: String(port), SEED_DEMO: '0' }
  const from = performance.now()
  const child = spawn(process.execPath, [join(root, 'apps/standalone/start.mjs')], { env, stdio: 'ignore' })
  const ended = new Promise((resolve) => child.once('exit', resolve))
  try {
    await untilHealthy(`http://127.0.0.1:${port}/api/v1/health`, { from, child })
    return performance.now() - from
  } finally {
    child.kill('SIGTERM')
    await ended
  }
}

async function untilHealthy(url, { from, child }) {
  while (performance.now() - from < patienceMs) {
    if (child.exitCode !== null) throw new Error(`npm start ended with ${child.exitCode} before health answered`)
    const answer = await fetch(url).catch(() => null) // refused until it listens
    if (answer?.ok) return
    await new Promise((resolve) => setTimeout(resolve, lookEveryMs))
  }
  throw new Error(`health did not answer within ${patienceMs / 1000} s`)
}
