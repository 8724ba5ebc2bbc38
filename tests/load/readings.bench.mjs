// Readings in over HTTP, as ratios to COPY of the same rows into the same table of the same PostgreSQL, taking turns; what a
// month's chart of a one-second gauge costs with a month and with more stored; and Today's list while readings pour in.
//
//   npm run bench readings                             all of it: a year of seconds is some 3 GB and takes a while
//   npm run bench readings -- --share 0.05 --days 62   a twentieth of the posts, two months stored: to see that it works
//   npm run bench readings -- --only today             one part of it: posts, today or charts
//   npm run bench readings -- --only memory            ten million readings in posts of 5,000, which stands outside the whole
import { Agent } from 'node:http'
import { loadavg } from 'node:os'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { parseArgs } from 'node:util'
import { makePartitions } from '@fryward/readings'
import pg from 'pg'
import { from as copyFrom } from 'pg-copy-streams'
import { startDemoApi } from './demo-api.mjs'
import { connections, get } from './keep-asking.mjs'
import { post, postAgent, postOf, readingsOf } from './posting.mjs'
import { residentMb } from './processes.mjs'
import { measureToday } from './readings-today.mjs'

// Readings in a post, and how many readings a turn sends in such posts.
const sizes = [
  { size: 1, readings: 10_000 },
  { size: 10, readings: 60_000 },
  { size: 1000, readings: 400_000 },
  { size: 5000, readings: 500_000 },
]
const turns = 4
const chartAsks = 300
const warmUps = 10
const dayMs = 86_400_000

export async function run(given) {
  const text = { type: 'string' }
  const { values } = parseArgs({ args: given, options: { share: text, days: text, only: text } })
  const share = Number(values.share ?? 1)
  const days = Number(values.days ?? 365)
  const isWanted = (part) => (values.only ?? part) === part
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
    console.log(`Load of the machine: ${loadavg()[0].toFixed(1)}. The API holds ${memory()} MB.`)
    if (isWanted('posts')) {
      for (const each of sizes) await measurePosts({ server, client, devices, share, ...each })
      console.log(`The API holds ${memory()} MB after that.`)
    }
    if (isWanted('today')) {
      const aThousand = await measurePosts({
        server,
        client,
        devices,
        share,
        ...sizes.find(({ size }) => size === 1000),
      })
      await measureToday({ server, room, devices, perSecond: aThousand / 2, share })
    }
    if (values.only === 'memory') await measureMemory({ server, devices, share, memory })
    if (isWanted('charts')) await measureCharts({ pool, room, device: devices[0], days })
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

/** @returns readings a second in posts of this size. */
async function measurePosts({ server, client, devices, share, size, readings }) {
  const number = Math.max(Math.round(readings * share), size * connections)
  const [posts, copies] = [[], []]
  await postAll(server, bodiesOf({ devices, size, readings: number / 10 }))
  for (let turn = 0; turn < turns; turn += 1) {
    copies.push(await copyAll(client, devices, number))
    posts.push(await postAll(server, bodiesOf({ devices, size, readings: number })))
  }
  const ratio = (mean(posts) / mean(copies)).toFixed(3)
  console.log(
    `posts of ${String(size).padStart(4)}: ${thousands(mean(posts))} readings a second, COPY ${thousands(mean(copies))}, ratio ${ratio}${size === 1000 ? ' (aim 0.5)' : ''}`,
  )
  return mean(posts)
}

/** What the API holds in memory after each million. */
async function measureMemory({ server, devices, share, memory }) {
  const [size, million] = [5000, 1_000_000 * share]
  for (let number = 1; number <= 10; number += 1) {
    const rates = []
    // In parts, so that what is posted fits into this process.
    for (let part = 0; part < 5; part += 1)
      rates.push(await postAll(server, bodiesOf({ devices, size, readings: million / 5 })))
    console.log(
      `${(number * share).toFixed(1)} million: the API holds ${memory()} MB; ${thousands(mean(rates))} a second`,
    )
  }
}

/** Bodies made beforehand, for each connection its own device. */
const bodiesOf = ({ devices, size, readings }) =>
  devices.map((device) => ({
    token: device.token,
    bodies: Array.from({ length: Math.ceil(readings / size / devices.length) }, () => postOf(device, size)),
  }))

/** @returns readings a second that were answered, each connection sending one post after the other. */
async function postAll(server, lines) {
  const agent = postAgent(connections)
  const from = performance.now()
  const sent = await Promise.all(
    lines.map(async ({ token, bodies }) => {
      let number = 0
      for (const body of bodies) number += await post(server.api.url, { agent, token, ...body })
      return number
    }),
  )
  const seconds = (performance.now() - from) / 1000
  agent.destroy()
  return sent.reduce((sum, each) => sum + each, 0) / seconds
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
