// Kills under load: `npm start` as people run it, and writers who send numbered notes, each again until it is acknowledged.
// Each turn kills (SIGKILL) the parts together, then PostgreSQL, restarts PostgreSQL, all of that three times, and then kills
// the whole tree, each as soon as what was killed before answers again. Every acknowledged note then stands exactly once.
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { parseArgs } from 'node:util'
import { findFreePort } from '@fryward/standalone'
import pg from 'pg'
import { ensureDashboard } from '../../apps/standalone/build/steps.mjs'
import { chance } from '../faults/generated-requests.mjs'
import { openRoom, reckon, startWriters } from '../faults/numbered-notes.mjs'
import { claimCodeOf, databaseUrlOf, isAlive, kill, killTree, pidOf, startTree, stopTree } from './whole-tree.mjs'

const patienceMs = 120_000
const lookEveryMs = 100

/** @param {string[]} args `--turns 39 --seed 1`: a turn is 13 kills and 3 restarts. Ctrl-C ends after a turn, and tells. */
export async function run(args) {
  const { values } = parseArgs({
    args,
    options: { turns: { type: 'string', default: '39' }, seed: { type: 'string', default: '1' } },
  })
  await ensureDashboard()
  const folder = mkdtempSync(join(tmpdir(), 'fryward-faults-'))
  chmodSync(folder, 0o755)
  const house = { tree: await startTree({ dataDir: join(folder, 'data'), port: await findFreePort() }) }
  try {
    await attack(house, { turns: Number(values.turns), random: chance(Number(values.seed)) })
    await stopTree(house.tree)
    rmSync(folder, { recursive: true, force: true })
  } catch (thrown) {
    console.error(`${house.tree.said.flat().slice(-20).join('\n')}\n${folder} is left as it was.`)
    await killTree(house.tree)
    throw thrown
  }
}

async function attack(house, { turns, random }) {
  let isWanted = true
  process.once('SIGINT', () => {
    isWanted = false
  })
  const origin = `http://127.0.0.1:${house.tree.port}`
  house.room = await openRoom(origin, claimCodeOf(house.tree))
  const writers = startWriters(house.room)
  const times = Object.fromEntries(Object.keys(faults).map((what) => [what, []]))
  const strike = async (...whats) => {
    await sleep(200 + random() * 800)
    await Promise.all(
      whats.map(async (what) => {
        const from = performance.now()
        await faults[what](house)
        times[what].push(performance.now() - from)
      }),
    )
  }
  for (let turn = 1; turn <= turns && isWanted; turn += 1) {
    for (let time = 0; time < 3; time += 1) {
      await strike('API', 'scheduler', 'dashboard')
      await strike('PostgreSQL')
      await strike('PostgreSQL restarted')
    }
    await strike('whole tree')
    const kills = Object.values(times).flat().length - times['PostgreSQL restarted'].length
    console.log(`turn ${turn}: ${kills} kills, ${writers.acknowledged.size} notes acknowledged`)
  }
  await writers.stop()
  await tell(house, { writers, times })
}

/** What is done to it; each ends when that answers again. */
const faults = {
  API: (house) => killPart(house, 'API', () => isServed(house, '/api/v1/health')),
  scheduler: async (house) => {
    const at = new Date()
    await killPart(house, 'scheduler', () => hasTicked(house, at))
  },
  dashboard: (house) => killPart(house, 'dashboard', () => isServed(house, '/sign-in')),
  PostgreSQL: (house) => killPart(house, 'PostgreSQL', () => isServed(house, '/api/v1/health')),
  // As an administrator does it: everybody is sent away at once, nothing has to be recovered.
  'PostgreSQL restarted': (house) =>
    killPart(house, 'PostgreSQL', () => isServed(house, '/api/v1/health'), { signal: 'SIGINT' }),
  'whole tree': async (house) => {
    await killTree(house.tree)
    house.tree = await startTree(house.tree)
    await eventually(() => isServed(house, '/api/v1/health'))
    await eventually(() => isServed(house, '/sign-in'))
  },
}

async function killPart(house, part, answers, { signal = 'SIGKILL' } = {}) {
  const pid = pidOf(house.tree, part)
  kill(pid, signal)
  await eventually(() => !isAlive(pid))
  await eventually(answers)
}

async function isServed({ room }, path) {
  const answer = await fetch(`${room.origin}${path}`, { signal: AbortSignal.timeout(5000) })
  await answer.arrayBuffer()
  return answer.ok
}

async function hasTicked({ tree }, since) {
  const client = new pg.Client({ connectionString: databaseUrlOf(tree.dataDir) })
  await client.connect()
  try {
    const { rows } = await client.query('SELECT FROM last_tick WHERE at > $1', [since])
    return rows.length > 0
  } finally {
    await client.end()
  }
}

/** Asks until it is so; whoever cannot be asked yet is asked again. */
async function eventually(isSo) {
  const until = Date.now() + patienceMs
  let reason
  while (Date.now() < until) {
    try {
      if (await isSo()) return
    } catch (thrown) {
      reason = thrown
    }
    await sleep(lookEveryMs)
  }
  throw new Error(`no answer for ${patienceMs / 1000} s`, { cause: reason })
}

async function tell({ tree, room }, { writers, times }) {
  for (const [what, ms] of Object.entries(times)) {
    const sorted = ms.sort((a, b) => a - b)
    const at = (share) =>
      ((sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0) / 1000).toFixed(1)
    console.log(
      `${what.padEnd(20)} ${String(sorted.length).padStart(4)} times; answers again after ${at(0.5)} s (median), ${at(1)} s (longest)`,
    )
  }
  // A part that went down with what it leans on, and was not killed itself.
  const unasked = tree.said.flat().filter((line) => /ended by itself \((?!SIGKILL)/.test(line))
  for (const line of unasked.slice(0, 10)) console.log(line)
  const { lost, doubled } = await reckon(writers, { connectionString: databaseUrlOf(tree.dataDir), room })
  console.log(
    `${writers.acknowledged.size} notes acknowledged; lost ${lost}, doubled ${doubled}, refused ${writers.refusals.length}; parts that ended without being killed ${unasked.length}`,
  )
  for (const each of writers.refusals.slice(0, 10)) console.log(each)
  if (lost + doubled + writers.refusals.length > 0) process.exitCode = 1
}
