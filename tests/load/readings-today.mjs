// Today's list alone and beside readings that pour in, in alternating turns.
import { fork } from 'node:child_process'
import { join } from 'node:path'
import { connections, keepAsking } from './keep-asking.mjs'
import { processorSeconds, processorSecondsOfAll } from './processes.mjs'

// By how many ask: one loses little, and what the machine itself sways by has to be told from it.
const turnsOf = (askers) => (askers === 1 ? 9 : 5)
const turnMs = 4000
const size = 1000
// A second of posts: whoever is further behind would only be further behind yet.
const mostWaitMs = 1000

/**
 * The posts leave at fixed instants, whatever comes of Today or of them: they wait behind nothing, and slow down for nothing.
 *
 * Server, PostgreSQL, sender and whoever asks for Today share the processors of one machine. One person who asks again as soon as
 * an answer is there leaves room on two of them: what Today loses then, it loses to how the server goes about readings. Eight
 * who ask without a pause take both whole, and whatever readings cost is missing; so what each process took is printed.
 */
export async function measureToday({ server, room, devices, perSecond, share }) {
  const day = { url: `${room.base}/days/today`, cookie: room.cookie }
  const ms = Math.max(1000, Math.round(turnMs * share))
  await keepAsking(day, 1000)
  for (const askers of [1, connections]) await measureWith({ server, day, devices, perSecond, ms, askers })
}

async function measureWith({ server, day, devices, perSecond, ms, askers }) {
  const who = { API: server.api.pid, PostgreSQL: server.postgres.pid, asking: process.pid }
  const found = []
  for (let turn = 0; turn < turnsOf(askers); turn += 1) {
    const alone = await taking(who, ms, () => keepAsking(day, ms, askers))
    const sender = await startSender({ server, devices, perSecond, ms })
    const beside = await taking({ ...who, sending: sender.pid }, ms, async () => {
      const pouring = sender.pour()
      return { ...(await keepAsking(day, ms, askers)), ...(await pouring) }
    })
    sender.stop()
    found.push({ alone, beside })
  }
  say(found, { perSecond, ms, askers })
}

function say(found, { perSecond, ms, askers }) {
  const middleOf = (pick) => middle(found.map(pick))
  const [alone, beside] = [middleOf((each) => each.alone.perSecond), middleOf((each) => each.beside.perSecond)]
  const ratios = found.map((each) => each.beside.perSecond / each.alone.perSecond).toSorted((a, b) => a - b)
  const held = middleOf(({ beside: { kept } }) => kept / (ms / 1000))
  const unsent = found.reduce((sum, each) => sum + each.beside.unsent, 0)
  const times = (which) =>
    `${middleOf((each) => each[which].middleMs).toFixed(1)} ms (99 of 100 within ${middleOf((each) => each[which].p99Ms).toFixed(0)})`
  console.log(`today's list, ${askers} asking without a pause, ${found.length} turns of ${ms / 1000} s alone and beside readings:
  ${alone.toFixed(0)} requests a second alone, ${beside.toFixed(0)} beside, ratio ${middle(ratios).toFixed(2)} (aim 0.8; ${ratios[0].toFixed(2)} to ${ratios.at(-1).toFixed(2)}); each took ${times('alone')} alone, ${times('beside')} beside
  readings: ${thousands(held)} a second held of ${thousands(perSecond)} sent, half the rate of posts of ${size}; ${unsent} posts found no place; 99 of 100 answered within ${middleOf((each) => each.beside.postP99Ms).toFixed(0)} ms
  processors busy alone: ${processors(found, 'alone')}; beside: ${processors(found, 'beside')}`)
}

const processors = (found, which) =>
  Object.keys(found[0][which].took)
    .map((name) => `${name} ${middle(found.map((each) => each[which].took[name])).toFixed(2)}`)
    .join(', ')

/** What `work` finds, and how many processors each of these processes kept busy meanwhile. */
async function taking(pids, ms, work) {
  const secondsOf = (name, pid) => (name === 'PostgreSQL' ? processorSecondsOfAll : processorSeconds)(pid)
  const all = () => Object.fromEntries(Object.entries(pids).map(([name, pid]) => [name, secondsOf(name, pid)]))
  const before = all()
  const found = await work()
  const after = all()
  const took = Object.fromEntries(Object.keys(pids).map((name) => [name, ((after[name] - before[name]) * 1000) / ms]))
  return { ...found, took }
}

async function startSender({ server, devices, perSecond, ms }) {
  const mostUnderWay = Math.ceil((perSecond / size) * (mostWaitMs / 1000))
  const given = { url: server.api.url, devices, size, perSecond, ms, mostUnderWay }
  const child = fork(join(import.meta.dirname, 'pour.mjs'), [JSON.stringify(given)])
  const told = () =>
    new Promise((resolve, reject) => {
      child.once('message', resolve)
      child.once('exit', (code) => reject(new Error(`the sender ended with ${code}`)))
    })
  const ready = await told()
  // What it has made nobody makes again.
  for (const [index, { nextMs }] of ready.devices.entries()) devices[index].nextMs = nextMs
  return {
    pid: child.pid,
    stop: () => child.disconnect(),
    pour: () => {
      const found = told()
      child.send('pour')
      return found
    },
  }
}

const middle = (numbers) => numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)]
const thousands = (perSecond) => `${(perSecond / 1000).toFixed(1)} k`
