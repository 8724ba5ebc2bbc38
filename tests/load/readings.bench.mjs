// Readings in over HTTP, as ratios to COPY of the same rows into the same table of the same PostgreSQL, taking turns; what a
// month's chart of a one-second gauge costs with a month and with more stored; and Today's list while readings pour in.
//
//   npm run bench readings                             all of it: a year of seconds is some 3 GB and takes a while
//   npm run bench readings -- --share 0.05 --days 62   a twentieth of the posts, two months stored: to see that it works
import { readFileSync } from 'node:fs'
import { Agent, request } from 'node:http'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { parseArgs } from 'node:util'
import { makePartitions } from '@fryward/readings'
import pg from 'pg'
import { from as copyFrom } from 'pg-copy-streams'
import { startDemoApi } from './demo-api.mjs'
import { connections, get, keepAsking } from './keep-asking.mjs'

// Readings in a post, and how many readings a turn sends in such posts.
const sizes = [
  { size: 1, readings: 10_000 },
  { size: 10, readings: 60_000 },
  { size: 1000, readings: 400_000 },
  { size: 5000, readings: 500_000 },
]
const turns = 2
const turnMs = 4000
const chartAsks = 60
const warmUps = 10
const dayMs = 86_400_000

export async function run(given) {
  const { values } = parseArgs({ args: given, options: { share: { type: 'string' }, days: { type: 'string' } } })
  const share = Number(values.share ?? 1)
  const days = Number(values.days ?? 365)
  // Posts come from one machine, whose own limit is not what is asked about.
  const server = await startDemoApi({ isDurable: true, settings: { TRUSTED_PROXIES: '127.0.0.1' } })
  const client = new pg.Client({ connectionString: server.connectionString })
  await client.connect()
  const pool = new pg.Pool({ connectionString: server.connectionString, max: 2 })
  try {
    const cookie = await server.cookieOf('owner')
    const room = { base: `${server.api.url}/api/v1/rooms/${server.demo.roomId}`, cookie, id: server.demo.roomId }
    const devices = await Promise.all(Array.from({ length: connections }, (_, index) => letIn(room, index)))
    const memory = () => residentMb(server.api.pid)
    console.log(`The API holds ${memory()} MB.`)
    const aThousand = await measurePosts({ server, client, devices, share })
    console.log(`The API holds ${memory()} MB after that.`)
    await measureToday({ server, room, devices, perSecond: aThousand / 2 })
    await measureCharts({ pool, room, device: devices[0], days })
    console.log(`The API holds ${memory()} MB at the end.`)
  } finally {
    await pool.end()
    await client.end()
    await server.stop()
  }
}

/** A device with one gauge, its number in the table, and the moment that it has come to. */
async function letIn(room, index) {
  const { device, token } = await write(room, 'devices', { name: `Load ${index}` })
  const gauge = await write(room, `devices/${device.id}/gauges`, {
    ...{ key: 't1', quantity: 'temperature', subjectId: room.id, silentAfterMinutes: 10_000, stuckAfterHours: null },
  })
  // Nothing posted is older than a month, or of the hours that a chart is made of.
  return { token, gauge, nextMs: Date.now() - 30 * dayMs }
}

async function write({ base, cookie }, path, body) {
  const answer = await fetch(`${base}/${path}`, {
    ...{ method: 'POST', body: JSON.stringify(body) },
    headers: { cookie, 'content-type': 'application/json', origin: new URL(base).origin },
  })
  if (!answer.ok) throw new Error(`${path} answered ${answer.status}: ${await answer.text()}`)
  return answer.json()
}

/** Readings of a device, a second apart, which nobody has posted before. */
function readingsOf(device, number) {
  return Array.from({ length: number }, () => {
    device.nextMs += 1000
    return { gauge: 't1', at: new Date(device.nextMs).toISOString(), value: 25 + Math.round(Math.random() * 100) / 100 }
  })
}

/** @returns readings a second in posts of a thousand. */
async function measurePosts({ server, client, devices, share }) {
  const rates = {}
  await postAll(server, bodiesOf({ devices, size: 100, readings: 20_000 * share }))
  for (const { size, readings } of sizes) {
    const number = Math.max(Math.round(readings * share), size * connections)
    const [posts, copies] = [[], []]
    for (let turn = 0; turn < turns; turn += 1) {
      copies.push(await copyAll(client, devices, number))
      posts.push(await postAll(server, bodiesOf({ devices, size, readings: number })))
    }
    rates[size] = mean(posts)
    const ratio = (mean(posts) / mean(copies)).toFixed(3)
    console.log(
      `posts of ${String(size).padStart(4)}: ${thousands(mean(posts))} readings a second, COPY ${thousands(mean(copies))}, ratio ${ratio}${size === 1000 ? ' (aim 0.5)' : ''}`,
    )
  }
  return rates[1000]
}

/** Bodies made beforehand, for each connection its own device. */
const bodiesOf = ({ devices, size, readings }) =>
  devices.map((device) => ({
    token: device.token,
    bodies: Array.from({ length: Math.ceil(readings / size / devices.length) }, () => ({
      number: size,
      text: JSON.stringify(readingsOf(device, size)),
    })),
  }))

/** @returns readings a second that were answered, each connection sending one post after the other. */
async function postAll(server, lines) {
  const agent = new Agent({ keepAlive: true, maxSockets: connections })
  const from = performance.now()
  const sent = await Promise.all(
    lines.map(async ({ token, bodies }) => {
      let number = 0
      for (const body of bodies) number += await post(server, { agent, token, ...body })
      return number
    }),
  )
  const seconds = (performance.now() - from) / 1000
  agent.destroy()
  return sent.reduce((sum, each) => sum + each, 0) / seconds
}

let posted = 0
function post({ api }, { agent, token, text, number }) {
  posted += 1
  const headers = {
    ...{ authorization: `Bearer ${token}`, 'content-type': 'application/json' },
    'content-length': Buffer.byteLength(text),
    // As if from many machines, so that the limit of one is not met.
    'x-forwarded-for': `10.${(posted >> 16) & 255}.${(posted >> 8) & 255}.${posted & 255}`,
  }
  return new Promise((resolve, reject) => {
    const sending = request(`${api.url}/api/v1/readings`, { agent, method: 'POST', headers }, (answer) => {
      let said = ''
      answer.on('data', (chunk) => {
        said += chunk
      })
      answer.on('end', () => {
        const isKept = answer.statusCode === 201 && JSON.parse(said).kept === number
        if (isKept) resolve(number)
        else reject(new Error(`a post of ${number} was answered ${answer.statusCode}: ${said.slice(0, 300)}`))
      })
    })
    sending.on('error', reject)
    sending.end(text)
  })
}

/** @returns rows a second by COPY of rows as those that are posted, into the table that they go to. */
async function copyAll(client, devices, number) {
  const { rows } = await client.query('SELECT id, channel FROM gauge')
  const channelOf = new Map(rows.map(({ id, channel }) => [id, channel]))
  const lines = devices.flatMap((device) =>
    readingsOf(device, Math.ceil(number / devices.length)).map(
      ({ at, value }) => `${channelOf.get(device.gauge.id)}\t${at}\t${value}\n`,
    ),
  )
  const from = performance.now()
  await pipeline(
    Readable.from(chunksOf(lines)),
    client.query(copyFrom('COPY telemetry.reading (channel, at, value) FROM STDIN')),
  )
  return lines.length / ((performance.now() - from) / 1000)
}

function* chunksOf(lines) {
  for (let i = 0; i < lines.length; i += 1000) yield lines.slice(i, i + 1000).join('')
}

async function measureToday({ server, room, devices, perSecond }) {
  const day = { url: `${room.base}/days/today`, cookie: room.cookie }
  await keepAsking(day, 1000)
  const [alone, poured] = [[], []]
  let kept = 0
  for (let turn = 0; turn < turns; turn += 1) {
    alone.push((await keepAsking(day, turnMs)).perSecond)
    const pouring = pour(server, { devices, perSecond, ms: turnMs })
    poured.push((await keepAsking(day, turnMs)).perSecond)
    kept += await pouring
  }
  const rate = kept / ((turns * turnMs) / 1000)
  console.log(
    `today's list: ${mean(alone).toFixed(0)} requests a second alone, ${mean(poured).toFixed(0)} while ${thousands(rate)} readings a second pour in (half the rate is ${thousands(perSecond)}), ratio ${(mean(poured) / mean(alone)).toFixed(2)} (aim 0.8)`,
  )
}

/** Posts of a thousand at this rate, as far as they are answered in time. @returns readings that were kept. */
async function pour(server, { devices, perSecond, ms }) {
  const size = 1000
  const perTurnMs = (1000 * size * devices.length) / perSecond
  const rounds = Math.max(1, Math.floor(ms / perTurnMs))
  const lines = bodiesOf({ devices, size, readings: rounds * size * devices.length })
  const agent = new Agent({ keepAlive: true, maxSockets: connections })
  const from = performance.now()
  let kept = 0
  await Promise.all(
    lines.map(async ({ token, bodies }, line) => {
      for (const [round, body] of bodies.entries()) {
        const due = from + (round + line / lines.length) * perTurnMs
        if (due - from > ms || performance.now() - from > ms) return
        await new Promise((resolve) => setTimeout(resolve, Math.max(0, due - performance.now())))
        kept += await post(server, { agent, token, ...body })
      }
    }),
  )
  agent.destroy()
  return kept
}

/** The last thirty days of a gauge that read each second, with a month of them stored, then with so many days. */
async function measureCharts({ pool, room, device, days }) {
  const to = new Date()
  const { rows } = await pool.query('SELECT channel FROM gauge WHERE id = $1', [device.gauge.id])
  const channel = rows[0].channel
  const query = new URLSearchParams({ from: new Date(to - 30 * dayMs).toISOString(), to: to.toISOString() })
  const chart = { url: `${room.base}/gauges/${device.gauge.id}/series?${query}`, cookie: room.cookie }
  await store({ pool, channel, to, fromDay: 0, toDay: 31 })
  const month = await askCharts(chart)
  console.log(`a chart of 30 days with 31 days stored: ${said(month)}`)
  await store({ pool, channel, to, fromDay: 31, toDay: days })
  const year = await askCharts(chart)
  console.log(
    `a chart of 30 days with ${days} days stored: ${said(year)}, ratio of the middle ${(year.middle / month.middle).toFixed(2)} (aim 1)`,
  )
}

const said = ({ middle, slow }) => `${middle.toFixed(1)} ms, 95 of 100 within ${slow.toFixed(1)} ms (aim 100)`

/** A reading each second of these days before `to`, into months made for them, with their hours added up. */
async function store({ pool, channel, to, fromDay, toDay }) {
  for (let day = toDay; day > fromDay; day -= 1) {
    const first = new Date(to - day * dayMs)
    if (day === toDay || first.getUTCDate() < 3) await makePartitions(pool, first.toISOString())
    await pool.query(
      `INSERT INTO telemetry.reading (channel, at, value)
       SELECT $1, at, 25 + sin(extract(epoch FROM at) / 14000) FROM generate_series($2::timestamptz, $3, '1 second') AS at
       ON CONFLICT DO NOTHING`,
      [channel, first, new Date(first.getTime() + dayMs - 1000)],
    )
  }
  await pool.query(
    `INSERT INTO telemetry.stale_hour SELECT $1, hour FROM generate_series(date_trunc('hour', $2::timestamptz), $3, '1 hour') AS hour
     ON CONFLICT DO NOTHING`,
    [channel, new Date(to - toDay * dayMs), new Date(to - fromDay * dayMs)],
  )
  await pool.query('ANALYZE telemetry.reading')
}

async function askCharts({ url, cookie }) {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 })
  const times = []
  for (let ask = 0; ask < warmUps + chartAsks; ask += 1) {
    const from = performance.now()
    await get({ url, cookie, agent })
    if (ask >= warmUps) times.push(performance.now() - from)
  }
  agent.destroy()
  times.sort((one, other) => one - other)
  return { middle: times[Math.floor(times.length / 2)], slow: times[Math.floor(times.length * 0.95)] }
}

const mean = (numbers) => numbers.reduce((sum, each) => sum + each, 0) / numbers.length
const thousands = (perSecond) => `${(perSecond / 1000).toFixed(1)} k`

/** Linux says how much of a process is in memory. */
function residentMb(pid) {
  const line = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))
  return line ? Math.round(Number(line[1]) / 1024) : Number.NaN
}
